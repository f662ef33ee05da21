using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

/// <summary>A bike on the Try page: what a hand does and what an eye reads.</summary>
public sealed class Bike(IPage page) : IAsyncDisposable
{
    public IPage Page { get; } = page;

    public Task Turn(string control, string position) =>
        Page.GetByRole(AriaRole.Group, new() { Name = control, Exact = true }).GetByRole(AriaRole.Radio, new() { Name = position, Exact = true }).CheckAsync();

    /// <summary>Keeps a button pressed, or lets it go again.</summary>
    public Task Hold(string control) => Page.Locator(".hold", new() { HasText = control }).Locator(".latch").ClickAsync();

    public ILocator Button(string control) => Page.Locator(".key", new() { HasText = control });

    public Task Sees(string lamp, string word) => Expect(Line(lamp).Locator(".says")).ToHaveTextAsync(word);

    public ILocator Line(string lamp) => Page.Locator(".line", new() { HasText = lamp });

    public Task Light(string mark, string word) => Expect(Tile(mark)).ToContainTextAsync($"light {word}");

    public ILocator Tile(string mark) => Page.Locator(".tile").Filter(new() { Has = Page.GetByText(mark, new() { Exact = true }) });

    public Task Fuse(string fuse, string word) => Expect(Page.Locator(".fuses li", new() { HasText = fuse }).Locator(".says")).ToHaveTextAsync(word);

    /// <summary>The row of a wire: volts at both ends, amps.</summary>
    public ILocator Wire(string name) => Page.Locator(".wires .wire").Filter(new() { Has = Page.Locator(".title").GetByText(name, new() { Exact = true }) });

    /// <summary>The amps shown on a wire.</summary>
    public Task<string> Amps(string wire) => Wire(wire).Locator(".mid .computed").InnerTextAsync();

    /// <summary>The volts shown at the second end of a wire.</summary>
    public Task<string> Volts(string wire) => Wire(wire).Locator(".end").Last.Locator("b").InnerTextAsync();

    /// <summary>Puts in the first mistake found by these words.</summary>
    public async Task PutIn(string words)
    {
        await Page.Locator(".strip .act").Last.ClickAsync();
        await Page.GetByLabel("Find:").FillAsync(words);
        await Page.Locator(".mistakes details[open] .row").First.ClickAsync();
        await Expect(Page.GetByText("A mistake is in, put there on purpose:")).ToBeVisibleAsync();
    }

    public Task TakeOut() => Page.GetByRole(AriaRole.Button, new() { Name = "Take it out" }).ClickAsync();

    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();
}
