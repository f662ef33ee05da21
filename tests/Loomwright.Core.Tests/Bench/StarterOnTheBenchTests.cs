using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;

namespace Loomwright.Tests.Bench;

/// <summary>The starter on the bench: held before its wires, its unfused lead on after all else and off before it.</summary>
public sealed class StarterOnTheBenchTests
{
        [Theory]
    [InlineData("negative")]
    [InlineData("positive")]
    public void A_starter_is_clamped_and_its_caution_read_before_its_first_wire(string ground)
    {
        var first = Starter(ground).Steps.First(s => s.Act == Act.Connect);
        Assert.StartsWith("Clamp starter on the bench", first.Text, StringComparison.Ordinal);
        Assert.Contains(Cautions.Starter, first.Cautions);
    }

    [Theory]
    [InlineData("negative")]
    [InlineData("positive")]
    public void A_start_contact_that_is_closed_unasked_turns_the_starter_at_no_step_before_its_lead_goes_on(string ground)
    {
        var stage = Starter(ground);
        var welded = Patch.Apply(stage.Connected, new Fault.Shorted(new("starter relay", "30"), new("starter relay", "45")));
        var on = stage.Steps.Single(s => s is { Act: Act.PowerUp, Wire: "starter cable", PowerOn: true });
        Assert.Equal(on, stage.Steps.Last(s => s.Act == Act.PowerUp));
        Assert.DoesNotContain(stage.Steps, s => s.Text.Contains("clip lead on", StringComparison.Ordinal) && s.Text.Contains("starter cable", StringComparison.Ordinal));
        Assert.Contains(new Expectation("starter", "rests"), on.Expect);

        Assert.DoesNotContain(Turning(welded.Without("starter cable")), t => t);
        Assert.Contains(Turning(welded), t => t);

        IEnumerable<bool> Turning(Loom loom) =>
            new Rig(loom).Play(stage.Steps.Where(s => s.Act == Act.PowerUp).Select(s => s.Do).OfType<Operation.Set>()).SelectMany(f => f.Seen).Select(s => s is { Part: "starter", Symbol: Symbol.Turns });
    }

    [Theory]
    [InlineData("negative")]
    [InlineData("positive")]
    public void While_ohms_are_read_the_starters_lead_lies_in_the_clip_and_leaves_it_before_the_clip_goes_on(string ground)
    {
        var steps = Starter(ground).Steps;
        Assert.Contains(steps, s => s is { Act: Act.Connect, Wire: "starter cable" } && s.Text.Contains("clip lead, capped until power-up", StringComparison.Ordinal));
        var first = steps.First(s => s.Act == Act.PowerUp);
        Assert.Equal(("starter cable", false), (first.Wire, first.PowerOn));
        Assert.Contains("out of the ", first.Text, StringComparison.Ordinal);
        Assert.Equal(("starter cable", false), (steps[^1].Wire, steps[^1].PowerOn));
    }

    [Theory]
    [InlineData("negative")]
    [InlineData("positive")]
    public void The_starters_lead_comes_off_before_the_key_and_every_clip(string ground)
    {
        var down = Starter(ground).Steps.First(s => s.Act == Act.PowerDown);
        Assert.Equal("starter cable", down.Wire);
        Assert.True(down.PowerOn);
    }

    [Theory]
    [InlineData("negative")]
    [InlineData("positive")]
    public void Where_something_gets_hot_the_clip_comes_off_before_the_starters_lead_and_that_before_the_key(string ground)
    {
        var stage = Starter(ground);
        Assert.Equal([null, "starter cable", null], WayOff.Of(stage).Select(o => stage.Steps.Single(s => s.Act == Act.PowerDown && s.Text == o)).Select(s => s.Wire));
        Assert.StartsWith("Black clip lead", WayOff.Of(stage)[0], StringComparison.Ordinal);
        Assert.StartsWith("Set lock", WayOff.Of(stage)[^1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("negative")]
    [InlineData("positive")]
    public void Both_steps_that_put_a_tool_on_a_live_post_say_so(string ground)
    {
        var live = Starter(ground).Steps.Where(s => s is { PowerOn: true, Wire: "starter cable" }).ToList();
        Assert.Equal([Act.PowerUp, Act.PowerDown], live.Select(s => s.Act));
        Assert.All(live, s => Assert.Contains(Cautions.StarterLead, s.Cautions));
    }

    private static Stage Starter(string ground) => Plans.OnTheBench(ground == "negative" ? Starting.Bike : Starting.PositiveGround).Stages.Single(s => s.Title == "starter");
}
