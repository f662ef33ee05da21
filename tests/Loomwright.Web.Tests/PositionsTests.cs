using Bunit;
using Loomwright.Web.Bikes;
using Loomwright.Web.Positions;
using Microsoft.Extensions.DependencyInjection;

namespace Loomwright.Web.Tests;

public sealed class PositionsTests : BunitContext
{
    public PositionsTests() => Services.AddSingleton(new Garage(Path.Combine(AppContext.BaseDirectory, "examples")));

    [Fact]
    public async Task A_sound_design_is_walked_to_its_end_and_the_page_says_how_much_that_was()
    {
        var page = Render<PositionsPage>(p => p.Add(c => c.Path, "kittiwake-bench/kittiwake-bench.loom.yaml"));
        await page.Find("button").ClickAsync(new());

        Assert.Equal("No surprise", page.Find("#surprises-title").TextContent);
        Assert.Equal(Kittiwake.Bike.Walk().InWords, page.Find("[role=status]").TextContent);
        Assert.Equal("Walk every position", page.Find("button").TextContent);
    }

    [Fact]
    public async Task A_surprise_is_told_with_the_way_to_it()
    {
        var page = Render<PositionsPage>(p => p.Add(c => c.Path, "gallery/key-feed-left-out.loom.yaml"));
        await page.Find("button").ClickAsync(new());

        var surprise = Assert.Single(page.FindAll(".surprise"));
        Assert.Contains("tail lamp: works and shows nothing", surprise.TextContent, StringComparison.Ordinal);
        Assert.Contains("lock → riding", surprise.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_design_that_is_not_there_is_said_plainly() =>
        Assert.Equal("There is no such design here", Render<PositionsPage>(p => p.Add(c => c.Path, "nowhere.loom.yaml")).Find("h1").TextContent);
}
