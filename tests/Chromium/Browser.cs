using Microsoft.Playwright;

namespace Loomwright.Chromium;

/// <summary>The system's own Chromium, started once; nothing is downloaded.</summary>
public sealed class Browser : IAsyncDisposable
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    private readonly IPlaywright _playwright;
    private readonly IBrowser _browser;

    private Browser(IPlaywright playwright, IBrowser browser)
    {
        _playwright = playwright;
        _browser = browser;
    }

    /// <exception cref="FileNotFoundException">No Chromium is installed.</exception>
    public static async Task<Browser> Start()
    {
        var path = Environment.GetEnvironmentVariable("CHROMIUM") ?? Places.FirstOrDefault(File.Exists)
            ?? throw new FileNotFoundException("Chromium is not installed; on Debian: apt-get install chromium, or set CHROMIUM to its path");
        var playwright = await Playwright.CreateAsync();
        var browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = path,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--font-render-hinting=none"],
        });
        return new Browser(playwright, browser);
    }

    /// <summary>A page of its own at a size, in the light or the dim theme.</summary>
    public async Task<IPage> Page(Screen screen, bool dim = false)
    {
        var context = await _browser.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = screen.Width, Height = screen.Height },
            HasTouch = screen.Touch,
            ColorScheme = dim ? ColorScheme.Dark : ColorScheme.Light,
            ReducedMotion = ReducedMotion.Reduce,
            Locale = "en-GB",
        });
        context.SetDefaultTimeout(60_000);
        return await context.NewPageAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await _browser.DisposeAsync();
        _playwright.Dispose();
    }
}

/// <summary>A device the page must fit.</summary>
public sealed record Screen(string Name, int Width, int Height, bool Touch)
{
    public static Screen Laptop { get; } = new("laptop", 1366, 768, Touch: false);

    public static Screen Phone { get; } = new("phone", 390, 844, Touch: true);
}
