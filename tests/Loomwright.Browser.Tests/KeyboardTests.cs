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

        await Keys.Reach(bike.Page, "lock", "off");
        await keys.PressAsync("ArrowRight");
        await bike.Sees("rear cluster tail", "lit");

        await Keys.Reach(bike.Page, "front brake");
        await keys.DownAsync(" ");
        await bike.Sees("rear cluster stop", "lit");
        await keys.UpAsync(" ");
        await bike.Sees("rear cluster stop", "dark");

        await Keys.Reach(bike.Page, "hold left button");
        await keys.PressAsync("Enter");
        await bike.Sees("left rear indicator", "flashes");

        await Keys.Reach(bike.Page, "rear cluster tail");
        await keys.PressAsync("Enter");
        await Expect(bike.Page.Locator(".way")).ToBeVisibleAsync();

        await Keys.Reach(bike.Page, "Put a mistake in on purpose");
        await keys.PressAsync("Enter");
        await Expect(bike.Page.GetByLabel("Find:")).ToBeFocusedAsync();
        await keys.TypeAsync("key feed left out");
        await Expect(bike.Page.Locator(".mistakes details[open]")).ToHaveCountAsync(1);
        await Keys.Reach(bike.Page, "key feed is left out");
        await keys.PressAsync("Enter");
        await bike.Sees("rear cluster tail", "dark, was lit");

        await Expect(bike.Page.GetByRole(AriaRole.Button, new() { Name = "Take it out" })).ToBeFocusedAsync();
        await keys.PressAsync("Enter");
        await bike.Sees("rear cluster tail", "lit");
        await Expect(bike.Page.GetByRole(AriaRole.Button, new() { Name = "Put a mistake in on purpose" })).ToBeFocusedAsync();
    }
}
