using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

public sealed class OperatingTests(Bench bench)
{
    [Theory]
    [InlineData("laptop")]
    [InlineData("phone")]
    public async Task Turning_the_key_wakes_the_box_and_current_reaches_the_tail_lamp(string screen)
    {
        await using var bike = await bench.Try(screen);
        await bike.Sees("rear cluster tail", "dark");
        await bike.Light("X1", "off");

        await bike.Turn("lock", "riding");

        await bike.Sees("rear cluster tail", "lit");
        await bike.Light("X1", "on");
        await bike.Light("X7", "on");
        await Expect(bike.Page.Locator("section", new() { HasText = "box and its lights" }).Last).ToContainTextAsync("awake");
        Assert.Matches(@"^0\.0[34]\d A$", await bike.Amps("tail lamp feed"));
        Assert.Matches(@"^12\.\d\d V$", await bike.Volts("tail lamp feed"));
    }

    [Theory]
    [InlineData("laptop")]
    [InlineData("phone")]
    public async Task A_brake_held_lights_the_stop_lamp_only_while_it_is_held(string screen)
    {
        await using var bike = await bench.Try(screen);
        await bike.Turn("lock", "riding");
        Assert.Equal("0 A", await bike.Amps("stop lamp feed"));

        await bike.Hold("front brake");
        await bike.Sees("rear cluster stop", "lit");
        await bike.Light("X4", "on");
        Assert.Matches(@"^0\.(2|3)\d A$", await bike.Amps("stop lamp feed"));

        await bike.Hold("front brake");
        await bike.Sees("rear cluster stop", "dark");
        Assert.Equal("0 A", await bike.Amps("stop lamp feed"));
    }

    [Theory]
    [InlineData("laptop")]
    [InlineData("phone")]
    public async Task A_finger_on_the_button_presses_it_and_lifting_lets_it_go(string screen)
    {
        await using var bike = await bench.Try(screen);
        await bike.Turn("lock", "riding");
        await bike.Sees("rear cluster tail", "lit");

        await bike.Button("front brake").HoverAsync();
        await bike.Page.Mouse.DownAsync();
        await bike.Sees("rear cluster stop", "lit");

        await bike.Page.Mouse.UpAsync();
        await bike.Sees("rear cluster stop", "dark");
    }

    [Theory]
    [InlineData("laptop")]
    [InlineData("phone")]
    public async Task A_flashing_lamp_shows_the_amps_of_one_half_or_the_other_never_between(string screen)
    {
        await using var bike = await bench.Try(screen);
        await bike.Turn("lock", "riding");
        await bike.Hold("left button");
        await bike.Sees("left rear indicator", "flashes");
        await bike.Light("X5", "flashes");
        Assert.Matches(@"^1\.\d\d A$", await bike.Amps("left rear indicator feed"));

        await bike.Page.GetByRole(Microsoft.Playwright.AriaRole.Group, new() { Name = "Flash shown" }).GetByLabel("off").CheckAsync();
        await Expect(bike.Wire("left rear indicator feed").Locator(".mid .computed")).ToHaveTextAsync("0 A");
        await bike.Sees("left rear indicator", "flashes");
    }

    [Fact]
    public async Task Undo_takes_back_a_press_with_its_letting_go_and_at_rest_ends_everything()
    {
        await using var bike = await bench.Try("laptop");
        await bike.Turn("lock", "riding");
        await bike.Button("left button").ClickAsync();
        await bike.Sees("left rear indicator", "flashes");

        await bike.Page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await bike.Sees("left rear indicator", "dark");
        await bike.Sees("rear cluster tail", "lit");

        await bike.Page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "All at rest" }).ClickAsync();
        await bike.Sees("rear cluster tail", "dark");
    }

    [Fact]
    public async Task The_indicator_ends_by_itself_when_its_time_has_passed()
    {
        await using var bike = await bench.Try("laptop");
        await bike.Turn("lock", "riding");
        await bike.Button("left button").ClickAsync();
        await bike.Sees("left rear indicator", "flashes");

        await bike.Page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "let 1 min pass" }).ClickAsync();

        await bike.Sees("left rear indicator", "dark");
    }
}
