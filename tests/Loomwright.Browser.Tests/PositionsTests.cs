using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

public sealed class PositionsTests(Bench bench)
{
    [Fact]
    public async Task A_walk_can_be_stopped_and_then_says_that_not_every_position_was_walked()
    {
        var page = await bench.Open("positions/turnstone/turnstone.loom.yaml", "phone");
        await page.GetByRole(AriaRole.Button, new() { Name = "Walk every position" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Not every position was walked, the walk was stopped");
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("your bike was not measured");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_bench_example_is_walked_without_a_surprise()
    {
        var page = await bench.Open($"positions/{Bench.Kittiwake}", "laptop");
        await page.GetByRole(AriaRole.Button, new() { Name = "Walk every position" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "No surprise" })).ToBeVisibleAsync();
        await page.Context.CloseAsync();
    }
}
