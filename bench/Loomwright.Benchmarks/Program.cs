System.Console.WriteLine("no benchmark yet");
