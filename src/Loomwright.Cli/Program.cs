using Loomwright;
using Loomwright.Output;

Console.OutputEncoding = System.Text.Encoding.UTF8;
using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) =>
{
    pressed.Cancel = true;
    stop.Cancel();
};
return await CommandLine.Run(args, Screen.OfThisProcess(), stop.Token);
