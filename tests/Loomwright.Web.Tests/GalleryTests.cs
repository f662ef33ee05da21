using Bunit;
using Loomwright.Gallery;
using Loomwright.Web.Bikes;
using Loomwright.Web.Gallery;
using Microsoft.Extensions.DependencyInjection;

namespace Loomwright.Web.Tests;

public sealed class GalleryTests : BunitContext
{
    public GalleryTests() => Services.AddSingleton(new Garage(Path.Combine(AppContext.BaseDirectory, "examples")));

    [Fact]
    public void Every_broken_bike_is_listed_with_its_symptom_and_without_its_mistake()
    {
        var page = Render<GalleryPage>();
        Assert.Equal(BrokenBike.All.Select(b => b.Symptom), page.FindAll(".symptoms .row").Select(r => r.TextContent));
    }

    [Fact]
    public async Task The_mistake_stays_hidden_until_it_is_named()
    {
        var page = Render<QuizPage>(p => p.Add(c => c.Number, 1));
        Assert.DoesNotContain("in place of", page.Find("h1").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".what"));
        var wrong = page.FindAll(".choices .act:not(.main)").First(b => !b.TextContent.StartsWith("stop lamp feed sits on", StringComparison.Ordinal));
        await wrong.ClickAsync(new());
        Assert.StartsWith("It is not so that", page.Find("[role=status]").TextContent, StringComparison.Ordinal);
        await page.FindAll(".choices .act").Single(b => b.TextContent.StartsWith("stop lamp feed sits on box X5", StringComparison.Ordinal)).ClickAsync(new());
        Assert.Contains("Right: stop lamp feed sits on box X5", page.Find(".quiz").TextContent, StringComparison.Ordinal);
        Assert.Contains("rear cluster stop", page.Find(".what").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_there_is_not_is_said_plainly() =>
        Assert.Equal("There is no such broken bike here", Render<QuizPage>(p => p.Add(c => c.Number, 1000)).Find("h1").TextContent);
}
