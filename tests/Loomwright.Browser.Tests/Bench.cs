using Loomwright.Chromium;
using Loomwright.Web.Start;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Loomwright.Browser.Tests.Bench))]

namespace Loomwright.Browser.Tests;

/// <summary>One server on the examples and one Chromium for all tests.</summary>
public sealed class Bench : IAsyncLifetime
{
    public const string Kittiwake = "kittiwake-bench/kittiwake-bench.loom.yaml";

    private WebHost _host = null!;
    private Chromium.Browser _browser = null!;

    public string Address => _host.Address;

    public async ValueTask InitializeAsync()
    {
        Assertions.SetDefaultExpectTimeout(60_000);
        _host = await WebHost.Start(Path.Combine(AppContext.BaseDirectory, "examples"));
        _browser = await Chromium.Browser.Start();
    }

    public async ValueTask DisposeAsync()
    {
        await _browser.DisposeAsync();
        await _host.DisposeAsync();
    }

    /// <summary>A page of the program on a device; a whole address is another program's.</summary>
    public async Task<IPage> Open(string path, string screen, bool dim = false)
    {
        var page = await _browser.Page(screen == Screen.Phone.Name ? Screen.Phone : Screen.Laptop, dim);
        await page.GotoAsync(path.StartsWith("http", StringComparison.Ordinal) ? path : $"{Address}/{path}");
        return page;
    }

    /// <summary>The Kittiwake on the bench, answering.</summary>
    public async Task<Bike> Try(string screen, string path = Kittiwake, bool dim = false)
    {
        var page = await Open($"try/{path}", screen, dim);
        await page.Locator("[data-live]").WaitForAsync();
        return new Bike(page);
    }

    /// <summary>The Kittiwake on the bench as a picture, answering.</summary>
    public async Task<Drawn> Picture(string screen, string path = Kittiwake, bool dim = false)
    {
        var page = await Open($"picture/{path}", screen, dim);
        await page.Locator("[data-live]").WaitForAsync();
        return new Drawn(page);
    }
}
