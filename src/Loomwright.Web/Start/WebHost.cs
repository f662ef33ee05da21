using System.Globalization;
using System.Net;
using Loomwright.Web.Bikes;
using Loomwright.Web.Cause;
using Loomwright.Web.Guided;
using Loomwright.Web.Picture;
using Loomwright.Web.Shell;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Loomwright.Web.Start;

/// <summary>The running page of one folder of designs. Disposing it stops it.</summary>
public sealed class WebHost : IAsyncDisposable
{
    // A stage of answers has some ten kilobytes.
    private const int LargestRequest = 256 * 1024;

    private readonly WebApplication _app;

    private WebHost(WebApplication app, string address)
    {
        _app = app;
        Address = address;
        ReadOnly = app.Services.GetRequiredService<Garage>().ReadOnly;
    }

    /// <summary>Where a browser finds it: <c>http://127.0.0.1:5080</c>.</summary>
    public string Address { get; }

    /// <summary>The link that lets a phone in, or null when only this machine is answered.</summary>
    public string? PhoneLink { get; private init; }

    /// <summary>Why nothing can be written in the folder, as found at the start; null when it can.</summary>
    public string? ReadOnly { get; }

    /// <summary>Starts serving a folder. Answers only on this machine unless told a network address.</summary>
    /// <param name="folder">The folder of designs.</param>
    /// <param name="port">0 takes any free one.</param>
    /// <param name="network">The network address to answer on too, for who has the link; null: this machine alone.</param>
    /// <param name="stop">Cancels the start.</param>
    /// <exception cref="IOException">The port is taken.</exception>
    /// <exception cref="System.Net.Sockets.SocketException">It may not be listened on.</exception>
    public static async Task<WebHost> Start(string folder, int port = 0, IPAddress? network = null, CancellationToken stop = default)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(WebHost).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
            EnvironmentName = Environments.Production,
        });
        var door = new Door(network is null ? null : folder);
        var at = port == 0 && network is not null ? LocalNetwork.FreePort() : port;
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = LargestRequest;
            server.Listen(IPAddress.Loopback, at);
            if (network is not null)
            {
                server.Listen(network, at);
            }
        });

        // Why it could not start is told by who started it.
        builder.Logging.ClearProviders().SetMinimumLevel(LogLevel.Error).AddFilter("Microsoft.Extensions.Hosting", LogLevel.None).AddConsole(c => c.LogToStandardErrorThreshold = LogLevel.Trace);
        // A page that is open holds its link until it is taken away.
        builder.Services.Configure<HostOptions>(o => o.ShutdownTimeout = TimeSpan.FromSeconds(1));
        builder.Services.AddSingleton(_ => new Garage(folder));
        builder.Services.AddSingleton(new Drawer());
        builder.Services.AddSingleton(services => services.GetRequiredService<Garage>().Guide);
        builder.Services.AddRazorComponents().AddInteractiveServerComponents();
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();

        var app = builder.Build();
        app.Use(further => context => door.Pass(context, further));
        // A script that asks is told by the number alone.
        app.UseWhen(c => !c.Request.Path.StartsWithSegments("/session-api", StringComparison.Ordinal), pages => pages.UseStatusCodePagesWithReExecute("/no-such-page"));
        // Behind the page for what is not there, which is looked up anew.
        app.UseRouting();
        app.UseAntiforgery();
        app.MapGet("/served/{name}", Served.Answer);
        app.MapGet(Changes.Route, Changes.Answer);
        app.MapGet(WireSheet.Route, WireSheet.Answer);
        SessionApi.Map(app);
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = null);
        await app.StartAsync(stop);
        return new WebHost(app, app.Urls.First())
        {
            PhoneLink = network is null ? null : string.Create(CultureInfo.InvariantCulture, $"http://{network}:{at}{Door.Way}{door.Token}"),
        };
    }

    /// <summary>Ends when the page is stopped from outside: Ctrl+C, or the token.</summary>
    public Task Stopped(CancellationToken stop = default) => _app.WaitForShutdownAsync(stop);

    /// <summary>Lets the pages that are open go before what they stand on does.</summary>
    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
    }
}
