using System.ComponentModel;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Loomwright.OnDisk;
using Loomwright.Output;
using Loomwright.Web.Start;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>serve [FOLDER]</c>: opens the workspace in the browser; also what a call without a verb does.</summary>
public sealed class ServeVerb(Screen screen) : AsyncCommand<ServeVerb.Settings>
{
    public const string Name = "serve";

    /// <summary>Port taken when none is named; any free one when that is in use.</summary>
    public const int UsualPort = 5080;

    /// <summary>Which folder, and where to listen.</summary>
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "[FOLDER]")]
        [Description("The folder your designs are in; without it the one you are in. The examples when it holds none")]
        public string? Folder { get; init; }

        [CommandOption("--port <PORT>")]
        [Description("Port to listen on, 0 for any free one; without it 5080, or a free one when that is taken")]
        public int? Port { get; init; }

        [CommandOption("--lan")]
        [Description("Let a phone in the same network in, by a link and a square to scan")]
        public bool Lan { get; init; }

        [CommandOption("--address <ADDRESS>")]
        [Description("With --lan: which of this machine's addresses the phone finds it under, 192.168.1.20")]
        public string? Address { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<ServeVerb>(Name)
        .WithDescription("Open a folder of designs in the browser: operate them, check them, follow the bench plan")
        .WithExample(Name)
        .WithExample(Name, "my-bikes", "--port", "8000");

    /// <summary>The examples that come with the program.</summary>
    public static string Examples { get; } = Path.Combine(AppContext.BaseDirectory, "examples");

    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Port is < 0 or > 65535)
        {
            return screen.WrongUsage($"--port {settings.Port.Value.ToString(CultureInfo.InvariantCulture)}: a port is a number from 0 to 65535.");
        }

        var network = !settings.Lan ? null : settings.Address is null ? LocalNetwork.Address() : Named(settings.Address);
        if (settings.Lan && network is null)
        {
            return screen.WrongUsage(settings.Address is null
                ? "--lan: this machine is in no network. Join the phone's hotspot, or make one here, and try again."
                : $"--address {settings.Address}: this machine has no such address in a network; leave it out to have one found.");
        }

        var folder = settings.Folder ?? ".";
        var workspace = Workspace.Open(folder);
        if (workspace.Designs.IsEmpty)
        {
            if (!Directory.Exists(workspace.Folder))
            {
                return screen.WrongUsage(Sentence(workspace.Message!));
            }

            await screen.Error.WriteLineAsync($"{Sentence(workspace.Message!)} Showing the examples.");
            workspace = Workspace.Open(Examples);
        }

        WebHost page;
        try
        {
            page = await Start(workspace.Folder, settings.Port, network, cancellationToken);
        }
        catch (Exception e) when (e is IOException or SocketException)
        {
            return screen.WrongUsage(NotListening(settings.Port ?? UsualPort, e));
        }

        await using (page)
        {
            await screen.Out.WriteLineAsync($"{workspace.Folder}: {string.Join(", ", workspace.Designs.Select(d => d.Path))}");
            if (page.ReadOnly is { } why)
            {
                await screen.Out.WriteLineAsync(why);
            }

            await screen.Out.WriteLineAsync($"Open {page.Address} in a browser on this machine. Ctrl+C stops.");
            if (page.PhoneLink is { } link)
            {
                await screen.Out.WriteLineAsync($"{Square.Of(link)}\nOn the phone, scan the square or open {link}");
                await screen.Out.WriteLineAsync("Who has the link can see and change this folder until you stop. The network is not encrypted: use one you trust.");
            }

            await page.Stopped(cancellationToken);
        }

        return cancellationToken.IsCancellationRequested ? ExitCode.Stopped : ExitCode.Answered;
    }

    /// <summary>Why a port cannot be listened on, with the cure.</summary>
    internal static string NotListening(int port, Exception why) => string.Create(CultureInfo.InvariantCulture,
        $"Port {port} {(why is SocketException { SocketErrorCode: SocketError.AccessDenied } ? "needs a right you do not have" : why is SocketException other ? $"cannot be listened on: {other.Message}" : "is taken")}; name another with --port, or 0 for any free one.");

    private static async Task<WebHost> Start(string folder, int? port, IPAddress? network, CancellationToken stop)
    {
        try
        {
            return await WebHost.Start(folder, port ?? UsualPort, network, stop);
        }
        catch (Exception e) when (port is null && (e is IOException or SocketException))
        {
            return await WebHost.Start(folder, 0, network, stop);
        }
    }

    private static IPAddress? Named(string text) => IPAddress.TryParse(text, out var address) && address.AddressFamily == AddressFamily.InterNetwork && LocalNetwork.Has(address) ? address : null;

    private static string Sentence(string message) => char.ToUpperInvariant(message[0]) + message[1..] + ".";
}
