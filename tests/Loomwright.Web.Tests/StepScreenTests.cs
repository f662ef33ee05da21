using Bunit;
using Loomwright.Web.Guided;

namespace Loomwright.Web.Tests;

public sealed class StepScreenTests : BunitContext
{
    private static readonly Loomwright.Bench.Stage Alone = Kittiwake.Bike.Plan().Stages[0];

    [Fact]
    public void Everything_a_step_asks_to_be_read_has_a_field_amps_in_line_too()
    {
        Assert.Contains(Alone.Steps, s => s is { Meter: null } && s.Expect.Any(e => e.IsRead));
        foreach (var step in Alone.Steps)
        {
            var screen = Render<StepScreen>(p => p.Add(s => s.Stage, Alone).Add(s => s.Step, step));
            Assert.Equal(step.Expect.Where(e => e.IsRead).Select(e => e.What), screen.FindAll("[data-read]").Select(r => r.GetAttribute("data-read")));
        }
    }

    [Fact]
    public void No_line_ends_between_a_terminal_and_its_sign()
    {
        var step = Alone.Steps.First(s => s.Text.Contains("battery - ", StringComparison.Ordinal) || s.Text.EndsWith("battery -.", StringComparison.Ordinal));
        Assert.Contains("battery\u00A0-", Render<StepScreen>(p => p.Add(s => s.Stage, Alone).Add(s => s.Step, step)).Find("h1").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_field_for_ohms_says_how_no_reading_looks_and_is_called_by_what_the_tips_hold()
    {
        foreach (var step in Alone.Steps.Where(s => s.Meter is { Dial: Loomwright.Bench.Dial.Ohms }))
        {
            var read = Render<StepScreen>(p => p.Add(s => s.Stage, Alone).Add(s => s.Step, step)).Find("[data-read]");
            Assert.Equal($"{step.Meter!.RedTip} to {step.Meter.BlackTip}", read.GetAttribute("data-read"));
            Assert.Contains("or a lone 1", read.QuerySelector("[data-reads]")!.TextContent, StringComparison.Ordinal);
        }

        Assert.Contains(Alone.Steps, s => s.Expect.Any(e => e.What == "the clip for battery + to the clip for battery -"));
    }

    [Fact]
    public void In_the_first_stage_nothing_is_said_to_have_worked_before_and_the_key_is_what_lies_on_the_table()
    {
        var text = Render<NotScreen>(p => p.Add(s => s.Stage, Alone).Add(s => s.Path, "b")).Find("#screen-not").TextContent;
        Assert.DoesNotContain("before it worked", text, StringComparison.Ordinal);
        Assert.Contains("Open the bench switch in the lead that stands in for lock.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_the_battery_is_measured_by_itself_it_is_live_with_nothing_on_it()
    {
        var bare = Assert.Single(Alone.Steps, s => Standing.IsBare(Alone, s));
        Assert.Equal("battery is live, nothing on it", Render<StepScreen>(p => p.Add(s => s.Stage, Alone).Add(s => s.Step, bare)).Find(".power").TextContent.Trim());
    }

    [Fact]
    public void Before_ohms_are_read_again_clips_come_off_and_the_meter_comes_out_of_the_line()
    {
        var steps = Render<PutBackScreen>(p => p.Add(s => s.Stage, Alone)).FindAll("li").Select(l => l.TextContent).ToList();
        Assert.Equal(Alone.Steps.Where(s => s.Act == Loomwright.Bench.Act.PowerDown).Select(s => s.Text), steps);
        Assert.StartsWith("Meter out: box supply and key fuse link back on main fuse 2, red plug back to V", steps[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void What_may_have_got_hot_is_what_lies_on_the_bench_the_lead_and_not_the_lock_it_stands_in_for()
    {
        var parts = Render<HotAtScreen>(p => p.Add(s => s.Stage, Alone).Add(s => s.Path, "b")).FindAll("optgroup[label=Parts] option");
        Assert.Equal(["battery", "main fuse", "key fuse", "the lead in place of lock", "the fuse in the lead in place of lock", "the bench switch in the lead in place of lock", "box", "ground bar"], parts.Select(p => p.TextContent));
        Assert.All(parts.Skip(3).Take(3), p => Assert.Equal("lock", p.GetAttribute("data-name")));
        Assert.Equal(("lock", "The lead in place of lock"), (parts[3].GetAttribute("data-name"), parts[3].GetAttribute("data-says")));
        var onTheBike = Render<HotAtScreen>(p => p.Add(s => s.Stage, Kittiwake.Bike.PlanOnTheBike().Stages[^1]).Add(s => s.Path, "b"));
        Assert.Contains(onTheBike.FindAll("option"), o => o.TextContent == "lock");
        Assert.DoesNotContain(onTheBike.FindAll("option"), o => o.TextContent.Contains("bench switch", StringComparison.Ordinal));
    }

    [Fact]
    public void The_fuse_that_stays_is_not_called_one_for_first_power()
    {
        var stage = Kittiwake.Bike.PlanOnTheBike().Stages[2];
        Assert.True(stage.FirstFuse.Stays);
        Assert.DoesNotContain("irst", Render<StepScreen>(p => p.Add(s => s.Stage, stage).Add(s => s.Step, stage.Steps[0])).Find(".between").TextContent, StringComparison.Ordinal);
        Assert.Equal("Fuse", Render<Gate>(p => p.Add(g => g.Stage, stage)).Find("dt").TextContent);
        Assert.Contains("first fuse 1 A", Render<StepScreen>(p => p.Add(s => s.Stage, Alone).Add(s => s.Step, Alone.Steps[0])).Find(".between").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_it_is_hot_the_hand_comes_off_first_and_then_power()
    {
        var steps = Render<HotScreen>(p => p.Add(s => s.Stage, Alone)).FindAll("li").Select(l => l.TextContent).ToList();
        Assert.StartsWith("Hands off the wire", steps[0], StringComparison.Ordinal);
        Assert.Equal(Loomwright.Bench.WayOff.Of(Alone), steps.Skip(1));
    }

    [Fact]
    public void A_lead_acid_battery_is_not_spoken_of_as_lithium() =>
        Assert.DoesNotContain("ithium", Render<HotScreen>(p => p.Add(s => s.Stage, Alone)).Find("#screen-hot").TextContent, StringComparison.Ordinal);
}
