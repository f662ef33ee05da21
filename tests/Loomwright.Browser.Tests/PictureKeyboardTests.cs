using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

public sealed class PictureKeyboardTests(Bench bench)
{
    [Fact]
    public async Task The_whole_of_Try_in_the_picture_goes_by_keyboard()
    {
        await using var drawn = await bench.Picture("laptop");
        var keys = drawn.Page.Keyboard;

        await Keys.Reach(drawn.Page, "lock", "off");
        await keys.PressAsync("ArrowRight");
        await drawn.Lit("rear cluster", true);

        await Keys.Reach(drawn.Page, "hold front brake");
        await keys.PressAsync("Enter");
        await Expect(drawn.Answer("rear cluster stop")).ToHaveTextAsync("lit");

        await Keys.Reach(drawn.Page, "Picture of the wiring");
        var before = await Drawn.Still(drawn.Part("box"));
        await keys.PressAsync("+");
        Assert.True((await Drawn.Still(drawn.Part("box"))).Width > before.Width);
        await keys.PressAsync("ArrowRight");
        await keys.PressAsync("-");
        await keys.PressAsync("0");
        Assert.Equal(before.X, (await Drawn.Still(drawn.Part("box"))).X, 1f);

        await keys.PressAsync("Tab");
        for (var presses = 0; presses < 120 && await Keys.Called(drawn.Page) != "wire tail lamp feed"; presses++)
        {
            await keys.PressAsync("ArrowRight");
        }

        await keys.PressAsync("Enter");
        await Expect(drawn.Page.Locator(".chosen h2")).ToHaveTextAsync("tail lamp feed");
        await Keys.Reach(drawn.Page, "Follow this wire");
        await keys.PressAsync("Enter");
        await Expect(drawn.Page.Locator(".follow li").First).ToContainTextAsync("battery");

        await drawn.Wire("tail lamp feed").FocusAsync();
        var menu = drawn.Page.GetByRole(AriaRole.Dialog);
        var close = menu.GetByRole(AriaRole.Button, new() { Name = "Close" });
        await keys.PressAsync("m");
        await Expect(menu.Locator("h2")).ToHaveTextAsync("Put in at tail lamp feed");
        await Expect(close).ToBeFocusedAsync();
        await keys.PressAsync("Escape");
        await Expect(drawn.Wire("tail lamp feed")).ToBeFocusedAsync();
        await keys.PressAsync("m");
        await Expect(close).ToBeFocusedAsync();
        await Keys.Reach(drawn.Page, "left out or broken");
        await keys.PressAsync("Enter");
        await Expect(drawn.Answer("rear cluster tail")).ToHaveTextAsync("dark, was lit");

        await Expect(drawn.Page.GetByRole(AriaRole.Button, new() { Name = "Take it out" })).ToBeFocusedAsync();
        await keys.PressAsync("Enter");
        await drawn.Lit("rear cluster", true);
        await Expect(drawn.Wire("tail lamp feed")).ToBeFocusedAsync();
    }
}
