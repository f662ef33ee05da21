using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

public sealed class PictureTests(Bench bench)
{
    [Fact]
    public async Task Turning_the_key_lights_the_tail_in_the_picture_and_its_wire_grows()
    {
        await using var drawn = await bench.Picture("laptop");
        await drawn.Lit("rear cluster", false);
        await drawn.Flows("tail lamp feed", 1);

        await drawn.Turn("lock", "riding");

        await drawn.Lit("rear cluster", true);
        await drawn.Flows("tail lamp feed", 2);
        await Expect(drawn.Page.Locator(".state text", new() { HasText = "tail lit" })).ToBeVisibleAsync();
        await drawn.Page.GetByText("amps", new() { Exact = true }).ClickAsync();
        await drawn.Says("tail lamp feed", "0.040 A");
        await drawn.Page.GetByText("letters", new() { Exact = true }).ClickAsync();
        await drawn.Says("tail lamp feed", "GY 0.5");
    }

    [Fact]
    public async Task The_lights_on_the_case_tell_in_the_picture_what_the_box_reads_and_does()
    {
        await using var drawn = await bench.Picture("laptop");
        await drawn.CaseLight("box", "X4", "light-off");
        await drawn.Turn("lock", "riding");
        await drawn.Page.GetByRole(AriaRole.Button, new() { Name = "hold left button" }).ClickAsync();

        await drawn.CaseLight("box", "X7", "light-on");
        await drawn.CaseLight("box", "X5", "light-flashing");
        await drawn.CaseLight("box", "X4", "light-off");
    }

    [Fact]
    public async Task A_wire_clicked_is_followed_from_plus_to_minus_with_the_rest_quiet()
    {
        await using var drawn = await bench.Picture("laptop");
        await Click(drawn, "tail lamp feed");
        await drawn.Page.GetByRole(AriaRole.Button, new() { Name = "Follow this wire" }).ClickAsync();

        var stops = drawn.Page.Locator(".follow li");
        await Expect(stops.First).ToContainTextAsync("battery");
        await Expect(stops.Last).ToContainTextAsync("battery");
        await Expect(drawn.Page.Locator(".stop")).Not.ToHaveCountAsync(0);
        // By its style: a wire drawn straight has no height, and would not count as seen.
        await Expect(drawn.Wire("tail lamp feed").Locator(".o")).ToHaveCSSAsync("display", "inline");
        await Expect(drawn.Wire("stop lamp feed").Locator(".o")).ToHaveCSSAsync("display", "none");
    }

    [Fact]
    public async Task A_right_click_on_a_wire_lists_its_own_mistakes_and_one_put_in_tells_what_it_changed()
    {
        await using var drawn = await bench.Picture("laptop");
        await drawn.Turn("lock", "riding");
        await drawn.Lit("rear cluster", true);

        await Click(drawn, "tail lamp feed", MouseButton.Right);
        var menu = drawn.Page.GetByRole(AriaRole.Dialog);
        await Expect(menu.Locator("h2")).ToHaveTextAsync("Put in at tail lamp feed");
        await menu.GetByRole(AriaRole.Button, new() { Name = "tail lamp feed is left out or broken" }).ClickAsync();

        await Expect(drawn.Answer("rear cluster tail")).ToHaveTextAsync("dark, was lit");
        await Expect(drawn.Page.Locator(".what li").First).ToHaveTextAsync("rear cluster tail is dark, was lit");
        await drawn.Lit("rear cluster", false);
        await Expect(drawn.Wire("tail lamp feed")).ToContainClassAsync("touched");

        await drawn.Page.GetByRole(AriaRole.Button, new() { Name = "Take it out" }).ClickAsync();
        await drawn.Lit("rear cluster", true);
    }

    [Fact]
    public async Task What_would_burn_is_said_before_what_else_changed()
    {
        await using var drawn = await bench.Picture("laptop");
        await drawn.Turn("lock", "riding");
        await drawn.Page.GetByRole(AriaRole.Button, new() { Name = "A mistake", Exact = true }).ClickAsync();
        await drawn.Page.GetByLabel("Find: a wire").FillAsync("box B+ B- touch");
        await drawn.Page.Locator(".mistakes details[open] .row").First.ClickAsync();

        await Expect(drawn.Part("main fuse")).ToHaveAttributeAsync("data-is", "bad");
        await Expect(drawn.Page.Locator(".state text", new() { HasText = "blown" })).ToBeVisibleAsync();
        await Expect(drawn.Page.Locator(".desk .event").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task What_is_searched_is_lit_and_brought_into_the_middle()
    {
        await using var drawn = await bench.Picture("laptop");
        await drawn.Page.GetByLabel("Find a wire").FillAsync("X4 stop");
        await drawn.Page.Keyboard.PressAsync("Enter");

        await Expect(drawn.Part("box")).ToHaveAttributeAsync("aria-pressed", "true");
        await Expect(drawn.Part("box")).ToBeFocusedAsync();

        var (part, desk) = (await Drawn.Still(drawn.Part("box")), await Drawn.Still(drawn.Page.Locator(".drawn")));
        Assert.Equal(desk.X + (desk.Width / 2), part.X + (part.Width / 2), 4f);
    }

    [Fact]
    public async Task Every_sheet_of_the_bike_is_drawn_and_answers()
    {
        await using var drawn = await bench.Picture("laptop");
        var wrong = new List<string>();
        drawn.Page.Console += (_, message) =>
        {
            if (message.Type == "error")
            {
                wrong.Add(message.Text);
            }
        };
        var sheets = drawn.Page.GetByLabel("Sheet", new() { Exact = true });
        var titles = await sheets.Locator("option").AllInnerTextsAsync();
        Assert.Contains("tail", titles);
        for (var i = 1; i < titles.Count; i++)
        {
            await sheets.SelectOptionAsync(new SelectOptionValue { Index = i });
            await Expect(drawn.Page.Locator("svg.loom[role=group]")).ToHaveAttributeAsync("aria-label", titles[i].Trim());
            Assert.NotEqual(0, await drawn.Page.Locator("rect[role=button]").CountAsync());
        }

        Assert.Empty(wrong);
    }

    [Fact]
    public async Task A_control_on_its_own_box_moves_the_same_control()
    {
        await using var drawn = await bench.Picture("laptop");
        await drawn.Part("lock").ClickAsync(new() { Force = true });
        await drawn.Page.Locator(".chosen").GetByText("riding", new() { Exact = true }).ClickAsync();

        await drawn.Lit("rear cluster", true);
        await Expect(drawn.Page.Locator(".board > .controls input[value=riding]")).ToBeCheckedAsync();
    }

    [Fact]
    public async Task On_a_phone_the_way_of_the_wire_stands_alone_and_the_drawing_opens_on_a_tap()
    {
        await using var drawn = await bench.Picture("phone");
        await Expect(drawn.Page.Locator(".drawn")).ToBeHiddenAsync();
        await drawn.Page.GetByLabel("Find a wire").FillAsync("stop lamp feed");
        await drawn.Page.Locator(".found .row").First.ClickAsync();

        await Expect(drawn.Page.Locator(".follow li").First).ToBeVisibleAsync();
        await drawn.Page.GetByRole(AriaRole.Button, new() { Name = "Show the drawing" }).ClickAsync();
        await Expect(drawn.Part("box")).ToBeVisibleAsync();
    }

    // In the middle of the wire's longest run, where no other wire lies on it.
    private static async Task Click(Drawn drawn, string wire, MouseButton button = MouseButton.Left)
    {
        await Drawn.Still(drawn.Wire(wire).First);
        var at = await drawn.Wire(wire).First.EvaluateAsync<double[]>("""
            g => {
              const path = g.getRootNode().querySelector(g.querySelector("use").getAttribute("href")), m = g.getScreenCTM();
              const p = path.getPointAtLength(14).matrixTransform(m);
              return [p.x, p.y];
            }
            """);
        await drawn.Page.Mouse.ClickAsync((float)at[0], (float)at[1], new() { Button = button });
        await Expect(drawn.Wire(wire)).ToHaveAttributeAsync("aria-pressed", "true");
    }
}
