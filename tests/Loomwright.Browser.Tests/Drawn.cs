using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

/// <summary>A bike's picture: what a hand does and what an eye reads.</summary>
public sealed class Drawn(IPage page) : IAsyncDisposable
{
    public IPage Page { get; } = page;

    public ILocator Wire(string name) => Page.Locator($"g.w[data-wire='{name}']");

    public ILocator Part(string name) => Page.Locator($"rect[role=button][data-part='{name}']");

    /// <summary>Where a part lies on the screen once it lies still: a strip that opens or a slide moves the drawing a frame later.</summary>
    public static async Task<(float X, float Y, float Width, float Height)> Still(ILocator thing)
    {
        var at = await thing.EvaluateAsync<float[]>("""
            async (e) => {
              const now = () => { const r = e.getBoundingClientRect(); return [r.x, r.y, r.width, r.height]; };
              for (let was = now(), same = 0; same < 5;) {
                await new Promise(requestAnimationFrame);
                same = String(now()) === String(was) ? same + 1 : 0;
                was = now();
              }
              return now();
            }
            """);
        return (at[0], at[1], at[2], at[3]);
    }

    public Task Turn(string control, string position) =>
        Page.Locator(".board > .controls").GetByRole(AriaRole.Group, new() { Name = control, Exact = true }).GetByRole(AriaRole.Radio, new() { Name = position, Exact = true }).CheckAsync();

    /// <summary>How thick the wire is drawn: 0 dead, 1 volts alone, more with the amps.</summary>
    public Task Flows(string wire, int thickness) => Expect(Wire(wire)).ToHaveAttributeAsync("data-flow", thickness.ToString(System.Globalization.CultureInfo.InvariantCulture));

    /// <summary>What stands at the two ends of the wire.</summary>
    public Task Says(string wire, string text) => Expect(Page.Locator($"text.l[data-wire='{wire}']").First).ToHaveTextAsync(text);

    public Task Lit(string part, bool lit) => Expect(Part(part)).ToHaveAttributeAsync("data-is", lit ? "lit" : "");

    /// <summary>The small light beside a terminal: light-off, light-on or light-flashing.</summary>
    public Task CaseLight(string part, string terminal, string shows) => Expect(Page.Locator($".glow[data-part='{part}'][data-light='{terminal}']")).ToHaveAttributeAsync("data-is", shows);

    public ILocator Answer(string seen) => Page.Locator(".sense", new() { HasText = seen }).Locator("b");

    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();
}
