using Loomwright.Web.Start;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

/// <summary>The design is changed in an editor while its pages are open.</summary>
public sealed class OutsideEditTests(Bench bench) : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("loomwright");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task A_page_shows_what_an_editor_saved_without_being_loaded_again_by_hand()
    {
        await using var host = await Serve();
        var page = await bench.Open($"{host.Address}/check/b.loom.yaml", "laptop");
        await Expect(page.Locator(".brand")).ToHaveTextAsync("Kittiwake");

        await Rename();

        await Expect(page.Locator(".brand")).ToHaveTextAsync("Heron");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_bike_being_tried_changes_in_both_browsers_and_the_key_stays_turned()
    {
        await using var host = await Serve();
        await using var one = new Bike(await bench.Open($"{host.Address}/try/b.loom.yaml", "laptop"));
        await using var other = new Bike(await bench.Open($"{host.Address}/try/b.loom.yaml", "phone"));
        await one.Page.Locator("[data-live]").WaitForAsync();
        await other.Page.Locator("[data-live]").WaitForAsync();
        await one.Turn("lock", "riding");
        await one.Sees("rear cluster tail", "lit");

        await Rename();

        await Expect(one.Page.Locator(".brand")).ToHaveTextAsync("Heron");
        await Expect(other.Page.Locator(".brand")).ToHaveTextAsync("Heron");
        await one.Sees("rear cluster tail", "lit");
        await other.Sees("rear cluster tail", "dark");
    }

    private string Design => Path.Combine(_folder.FullName, "b.loom.yaml");

    private async Task<WebHost> Serve()
    {
        File.Copy(Path.Combine(AppContext.BaseDirectory, "examples", Bench.Kittiwake), Design);
        return await WebHost.Start(_folder.FullName, stop: TestContext.Current.CancellationToken);
    }

    private async Task Rename()
    {
        var text = await File.ReadAllTextAsync(Design, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(Design, text.Replace("\nname: Kittiwake\n", "\nname: Heron\n", StringComparison.Ordinal), TestContext.Current.CancellationToken);
    }
}
