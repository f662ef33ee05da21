using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

public sealed class KeyboardTests(Bench bench)
{
    [Fact]
    public async Task The_whole_of_Try_goes_by_keyboard()
    {
        await using var bike = await bench.Try("laptop");
        var keys = bike.Page.Keyboard;

        await Reach(bike.Page, "lock", "off");
        await keys.PressAsync("ArrowRight");
        await bike.Sees("rear cluster tail", "lit");

        await Reach(bike.Page, "front brake");
        await keys.DownAsync(" ");
        await bike.Sees("rear cluster stop", "lit");
        await keys.UpAsync(" ");
        await bike.Sees("rear cluster stop", "dark");

        await Reach(bike.Page, "hold left button");
        await keys.PressAsync("Enter");
        await bike.Sees("left rear indicator", "flashes");

        await Reach(bike.Page, "rear cluster tail");
        await keys.PressAsync("Enter");
        await Expect(bike.Page.Locator(".way")).ToBeVisibleAsync();

        await Reach(bike.Page, "Put a mistake in on purpose");
        await keys.PressAsync("Enter");
        await Expect(bike.Page.GetByLabel("Find:")).ToBeFocusedAsync();
        await keys.TypeAsync("key feed left out");
        await Expect(bike.Page.Locator(".mistakes details[open]")).ToHaveCountAsync(1);
        await Reach(bike.Page, "key feed is left out");
        await keys.PressAsync("Enter");
        await bike.Sees("rear cluster tail", "dark, was lit");

        await Expect(bike.Page.GetByRole(AriaRole.Button, new() { Name = "Take it out" })).ToBeFocusedAsync();
        await keys.PressAsync("Enter");
        await bike.Sees("rear cluster tail", "lit");
        await Expect(bike.Page.GetByRole(AriaRole.Button, new() { Name = "Put a mistake in on purpose" })).ToBeFocusedAsync();
    }

    // Tab until the focus rests on something so called: what cannot be reached this way cannot be used without a mouse.
    private static async Task Reach(IPage page, params string[] words)
    {
        const string Called = "() => { const e = document.activeElement; if (e === document.body) return ''; return [e.ariaLabel, e.innerText, ...[...(e.labels ?? [])].map(l => l.innerText), e.name].join(' '); }";
        for (var presses = 0; presses < 120; presses++)
        {
            var called = await page.EvaluateAsync<string>(Called);
            if (words.All(w => called.Contains(w, StringComparison.Ordinal)))
            {
                return;
            }

            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"Tab never reached {string.Join(", ", words)}");
    }
}
