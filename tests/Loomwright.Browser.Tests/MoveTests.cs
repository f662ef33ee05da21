using Loomwright.Web.Start;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

/// <summary>Boxes are moved in a copy of the design, since a move is written into the file.</summary>
public sealed class MoveTests(Bench bench) : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("loomwright");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task A_dragged_box_stays_is_in_the_file_and_can_be_put_back()
    {
        await using var host = await Serve();
        await using var drawn = await Open(host);
        var before = await Where(drawn, "lock");

        await Drag(drawn, "lock", 60, 40);

        await Expect(drawn.Page.GetByRole(AriaRole.Button, new() { Name = "Undo move" })).ToBeEnabledAsync();
        Assert.Contains("\nlayout:", await Text(), StringComparison.Ordinal);
        await drawn.Page.ReloadAsync();
        await drawn.Page.Locator("main[data-live]").WaitForAsync();
        Assert.NotEqual(before, await Where(drawn, "lock"));

        await Keys(drawn, "lock", "Shift+ArrowLeft");
        await drawn.Page.GetByRole(AriaRole.Button, new() { Name = "Undo move" }).ClickAsync();
        await Expect(drawn.Page.GetByRole(AriaRole.Button, new() { Name = "Undo move" })).ToBeDisabledAsync();
    }

    [Fact]
    public async Task Arranging_shows_before_and_after_and_writes_only_what_is_kept()
    {
        await using var host = await Serve();
        await using var drawn = await Open(host);

        await drawn.Page.GetByRole(AriaRole.Button, new() { Name = "Arrange" }).ClickAsync();
        await Expect(drawn.Page.GetByText("Arranged anew:")).ToBeVisibleAsync();
        await drawn.Page.GetByText("before", new() { Exact = true }).ClickAsync();
        Assert.DoesNotContain("\nlayout:", await Text(), StringComparison.Ordinal);
        await drawn.Page.GetByRole(AriaRole.Button, new() { Name = "Keep it" }).ClickAsync();

        await Expect(drawn.Page.GetByRole(AriaRole.Button, new() { Name = "Undo move" })).ToBeEnabledAsync();
        Assert.Contains("\nlayout:", await Text(), StringComparison.Ordinal);
    }

    private Task<string> Text() => File.ReadAllTextAsync(Path.Combine(_folder.FullName, "b.loom.yaml"), TestContext.Current.CancellationToken);

    private async Task<WebHost> Serve()
    {
        File.Copy(Path.Combine(AppContext.BaseDirectory, "examples", "cold-start", "cold-start.loom.yaml"), Path.Combine(_folder.FullName, "b.loom.yaml"));
        return await WebHost.Start(_folder.FullName, stop: TestContext.Current.CancellationToken);
    }

    private async Task<Drawn> Open(WebHost host)
    {
        var page = await bench.Open($"{host.Address}/picture/b.loom.yaml", "laptop");
        await page.Locator("main[data-live]").WaitForAsync();
        return new Drawn(page);
    }

    private static async Task<string> Where(Drawn drawn, string part) =>
        await drawn.Part(part).GetAttributeAsync("x") + " " + await drawn.Part(part).GetAttributeAsync("y");

    private static async Task Drag(Drawn drawn, string part, float right, float down)
    {
        var box = await Drawn.Still(drawn.Part(part));
        var (x, y) = (box.X + (box.Width / 2), box.Y + 4);
        await drawn.Page.Mouse.MoveAsync(x, y);
        await drawn.Page.Mouse.DownAsync();
        await drawn.Page.Mouse.MoveAsync(x + (right / 2), y + (down / 2));
        await drawn.Page.Mouse.MoveAsync(x + right, y + down);
        await drawn.Page.Mouse.UpAsync();
    }

    private static async Task Keys(Drawn drawn, string part, string keys)
    {
        await drawn.Part(part).FocusAsync();
        await drawn.Page.Keyboard.PressAsync(keys);
        await Expect(drawn.Page.GetByRole(AriaRole.Button, new() { Name = "Undo move" })).ToBeEnabledAsync();
    }
}
