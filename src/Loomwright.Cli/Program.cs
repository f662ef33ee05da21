using Loomwright;
using Loomwright.Output;

Console.OutputEncoding = System.Text.Encoding.UTF8;
using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) =>
{
    // The first press asks to end; a second one ends what does not listen.
    pressed.Cancel = !stop.IsCancellationRequested;
    stop.Cancel();
};
return await CommandLine.Run(args, Screen.OfThisProcess(), stop.Token);
