using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Loomwright.PageBench;

/// <summary>Serves the page that does nothing but count, with the same browser script as the picture.</summary>
internal static class EmptyHost
{
    /// <summary>Where the browser script is.</summary>
    public static string Script { get; private set; } = "";

    public static async Task<WebApplication> Start(string script)
    {
        Script = script;
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.ConfigureKestrel(server => server.Listen(IPAddress.Loopback, 0));
        builder.Logging.ClearProviders();
        builder.Services.AddRazorComponents().AddInteractiveServerComponents();
        var app = builder.Build();
        app.UseAntiforgery();
        app.MapRazorComponents<EmptyApp>().AddInteractiveServerRenderMode();
        await app.StartAsync();
        return app;
    }
}
