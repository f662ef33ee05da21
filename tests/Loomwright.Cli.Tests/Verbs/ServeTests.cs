using System.Net;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using Loomwright.Output;
using Loomwright.Verbs;

namespace Loomwright.Tests.Verbs;

public sealed partial class ServeTests
{
    [Fact]
    public async Task A_folder_is_served_at_the_printed_address_until_stopped()
    {
        using var folder = new Folder();
        folder.Write("b.loom.yaml", Repository.Read(Called.Bench));
        var (page, _, exit) = await Serve("serve", folder.Path, "--port", "0");
        Assert.Contains("Kittiwake", page, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Stopped, exit);
    }

    [Fact]
    public async Task A_folder_without_a_design_shows_the_examples_and_says_so()
    {
        using var folder = new Folder();
        var (page, error, _) = await Serve("serve", folder.Path, "--port", "0");
        Assert.Contains("Kittiwake", page, StringComparison.Ordinal);
        Assert.EndsWith("Showing the examples.\n", error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public async Task A_call_without_a_verb_serves()
    {
        var (page, _, _) = await Serve("--port", "0");
        Assert.Contains("Kittiwake", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_named_port_that_is_taken_is_said()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        var port = ((IPEndPoint)taken.LocalEndpoint).Port.ToString(System.Globalization.CultureInfo.InvariantCulture);
        var called = Called.With("serve", "examples", "--port", port);
        Assert.Equal(ExitCode.WrongUsage, called.Exit);
        Assert.Equal($"Port {port} is taken; name another with --port, or 0 for any free one.\n", called.Error);
    }

    [Fact]
    public void A_port_that_may_not_be_listened_on_is_said_as_that() => Assert.Equal(
        "Port 80 needs a right you do not have; name another with --port, or 0 for any free one.",
        ServeVerb.NotListening(80, new SocketException((int)SocketError.AccessDenied)));

    private static async Task<(string Page, string Error, int Exit)> Serve(params string[] call)
    {
        Environment.CurrentDirectory = Repository.Root;
        var token = TestContext.Current.CancellationToken;
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(token);
        await using var output = new Spoken();
        await using var error = new StringWriter { NewLine = "\n" };
        var running = Task.Run(() => CommandLine.Run(call, Screen.On(output, error, piped: true), stop.Token), token);
        var address = await output.Address.WaitAsync(TimeSpan.FromSeconds(60), token);
        using var browser = new HttpClient();
        var page = await browser.GetStringAsync(address, token);
        await stop.CancelAsync();
        return (page, error.ToString(), await running.WaitAsync(TimeSpan.FromSeconds(60), token));
    }

    [GeneratedRegex(@"http://[^ ]+", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Link();

    /// <summary>Waits for the line with the address.</summary>
    private sealed class Spoken : StringWriter
    {
        private readonly TaskCompletionSource<Uri> _address = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Task<Uri> Address => _address.Task;

        public override Task WriteLineAsync(string? value)
        {
            if (Link().Match(value ?? "") is { Success: true } link)
            {
                _address.TrySetResult(new Uri(link.Value));
            }

            return base.WriteLineAsync(value);
        }
    }
}
