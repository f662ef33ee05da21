using Bunit;
using Loomwright.Web.Bench;
using Loomwright.Web.Bikes;
using Loomwright.Web.Check;
using Loomwright.Web.Sizes;
using Loomwright.Web.Start;
using Loomwright.Web.Wires;
using Loomwright.Design;
using Loomwright.Sessions;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Loomwright.Web.Tests;

public sealed class PagesTests : BunitContext
{
    private const string Bench = "kittiwake-bench/kittiwake-bench.loom.yaml";

    public PagesTests() => Services.AddSingleton(new Garage(Path.Combine(AppContext.BaseDirectory, "examples")));

    [Fact]
    public void Everything_the_pages_ask_for_is_inside_the_program()
    {
        foreach (var name in new[] { "loom.css", "try.css", "bench.css", "board.css", "drawn.css", "picture.js", "sheet.js", "view.js", "hands.js", "session.css", "sizes.css", "session.js", "standing.js", "live.js", "symbols.svg", "theme.js", "blazor.web.js" })
        {
            Assert.NotEmpty(Served.Text(name));
        }
    }

    [Fact]
    public void The_first_page_lists_every_design_with_its_steps()
    {
        var page = Render<HomePage>();

        Assert.Contains(page.FindAll("h2"), h => h.TextContent == "Kittiwake");
        Assert.Contains(page.FindAll("a"), a => a.GetAttribute("href") == "/try/kittiwake-bench/kittiwake-bench.loom.yaml");
    }

    [Fact]
    public void A_lock_that_joins_feed_and_ground_is_a_stop_with_what_why_and_do()
    {
        var page = Render<CheckPage>(p => p.Add(c => c.Path, "gallery/lock-joins-feed-and-ground.loom.yaml"));

        var first = page.Find(".finding");
        Assert.Equal("Stop", first.QuerySelector(".severity")!.TextContent);
        Assert.Contains("Why", first.TextContent, StringComparison.Ordinal);
        Assert.Contains("Do", first.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wire_thinner_than_a_rule_asks_is_named_with_the_size_that_would_do_and_not_by_a_rule_that_accepts_it()
    {
        var (accepted, rejected) = (By("metric practice"), By("FAA AC 43.13-1B table 11-3"));

        Assert.DoesNotContain("thinner than this rule asks", accepted, StringComparison.Ordinal);
        Assert.Contains("battery plus is 2.5 mm², thinner than this rule asks", rejected, StringComparison.Ordinal);

        string By(string rule)
        {
            Services.GetRequiredService<NavigationManager>().NavigateTo($"/sizes/{Bench}?rule={Uri.EscapeDataString(rule)}");
            return Render<SizesPage>(p => p.Add(c => c.Path, Bench)).Find(".points").TextContent;
        }
    }

    [Fact]
    public void That_a_fuse_stands_cold_lamps_above_its_rating_is_told_and_is_nothing_to_look_at()
    {
        var page = Render<SizesPage>(p => p.Add(c => c.Path, Bench));
        Assert.Contains(page.FindAll("[aria-labelledby=change-title] p"), p => p.TextContent.Contains("draw 25.73 A for a moment, more than its rating. It stands that", StringComparison.Ordinal));
        Assert.Empty(page.FindAll("[aria-labelledby=change-title] li"));
    }

    [Fact]
    public void A_design_that_is_not_there_is_said_plainly()
    {
        var page = Render<CheckPage>(p => p.Add(c => c.Path, "nowhere.loom.yaml"));

        Assert.Equal("There is no such design here", page.Find("h1").TextContent);
    }

    [Fact]
    public void Every_stage_of_the_plan_shows_all_its_steps_cautions_and_expectations()
    {
        foreach (var stage in Kittiwake.Bike.Plan().Stages)
        {
            var view = Render<StageView>(p => p.Add(c => c.Stage, stage));

            Assert.Equal(stage.Steps.Length, view.FindAll(".doing").Count);
            Assert.Equal(stage.Steps.Sum(s => s.Cautions.Length), view.FindAll(".caution").Count);
            Assert.Equal(stage.Steps.Sum(s => s.Expect.Length), view.FindAll(".expect dt").Count);
        }
    }

    [Fact]
    public void How_a_terminal_is_written_is_said_once_and_lamps_are_named_as_on_paper()
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo($"/bench/{Bench}?stage=1");
        var page = Render<PlanPage>(p => p.Add(c => c.Path, Bench));
        Assert.Single(page.FindAll("p"), p => p.TextContent == "“battery +” and “battery.+” both mean terminal + of battery.");
        Assert.Contains(page.FindAll("dt"), d => d.TextContent == "rear cluster tail");
        Assert.DoesNotContain("rear cluster.tail", page.Find("article").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_without_stages_says_why_instead()
    {
        var folder = Directory.CreateTempSubdirectory("loomwright").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "bare.loom.yaml"), "loomwright: 1\nname: Bare\nparts:\n  main fuse:\n    kind: fuse\n    rating: 10 A\n");
            using var context = new BunitContext();
            context.Services.AddSingleton(new Garage(folder));

            var page = context.Render<PlanPage>(p => p.Add(c => c.Path, "bare.loom.yaml"));

            Assert.Equal("Not shown by this plan", page.Find("h2").TextContent);
            Assert.NotEmpty(page.FindAll(".points li"));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task Minutes_are_told_only_when_every_check_that_takes_them_is_worked_out()
    {
        var folder = Directory.CreateTempSubdirectory("loomwright").FullName;
        try
        {
            File.Copy(Path.Combine(AppContext.BaseDirectory, "examples", "gallery", "lamp-reversed.loom.yaml"), Path.Combine(folder, "minutes.loom.yaml"));
            using var context = new BunitContext();
            using var garage = new Garage(folder);
            context.Services.AddSingleton(garage);
            Assert.Equal("known when all checks are worked out", Minutes());

            var at = garage.Live("minutes.loom.yaml")!.Current;
            var whole = (await Proofs.Begun("minutes.loom.yaml", at.Sha256, at.Bike)).Plan.Stages[0];
            Assert.Equal(FormattableString.Invariant($"{Loomwright.Bench.Effort.Minutes(whole)} min"), Minutes());
            Assert.True(Loomwright.Bench.Effort.Minutes(whole) > Loomwright.Bench.Effort.Minutes(at.Bike.Plan().Stages[0]));

            string Minutes() => context.Render<PlanPage>(p => p.Add(c => c.Path, "minutes.loom.yaml")).FindAll(".facts dt").First(d => d.TextContent == "Takes about").NextElementSibling!.TextContent;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData(null, null, "w ")]
    [InlineData(0.0, 12.6, "w volts")]
    [InlineData(1.7, 12.6, "w amps")]
    [InlineData(-4.2, 0.0, "w many")]
    public void A_wire_grows_thicker_with_what_is_in_it(double? amps, double? volts, string drawn)
    {
        var band = Render<WireBand>(p => p.Add(b => b.Colour, new WireColour("GN", "WH")).Add(b => b.Amps, amps).Add(b => b.Volts, volts));

        Assert.StartsWith(drawn, band.Find("span").ClassName, StringComparison.Ordinal);
        Assert.Equal("--c:var(--GN);--t:var(--WH)", band.Find("span").GetAttribute("style"));
    }
}
