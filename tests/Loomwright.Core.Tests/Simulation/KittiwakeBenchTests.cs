using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.ProjectFile;
using Loomwright.Simulation;
using Loomwright.Text;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Simulation;

/// <summary>The example as it lies on the bench, and the mistakes a builder makes on it.</summary>
public class KittiwakeBenchTests
{
    internal static readonly Loom Healthy = DesignFile.Read(new SourceText("kittiwake-bench", Pages.Read("examples/kittiwake-bench/kittiwake-bench.loom.yaml"))).Loom!;

    [Fact]
    public void Key_then_brake_then_indicator_show_what_the_functions_promise()
    {
        var frames = new Rig(Healthy).Play([Set("lock", "riding"), Set("front brake", "pressed"), Set("front brake", "released"), Tap("left button"), Wait(45)]);

        Assert.All(frames, f => Assert.Equal(Outcome.Settled, f.Outcome));
        Assert.Equal(Symbol.Lit, frames[1].Symbol("rear cluster.tail"));
        Assert.Equal(Symbol.Dark, frames[1].Symbol("rear cluster.stop"));
        Assert.Equal(Symbol.Lit, frames[2].Symbol("rear cluster.stop"));
        Assert.Equal(Symbol.Dark, frames[3].Symbol("rear cluster.stop"));
        Assert.Equal(Symbol.Flashing, frames[5].Symbol("left rear indicator"));
        Assert.Equal(Symbol.Flashing, frames[5].Light("X5"));
        Assert.Equal(Symbol.Dark, frames[^1].Symbol("left rear indicator"));
        Assert.All(frames, f => Assert.All(f.Fuses, fuse => Assert.Equal(FuseState.Whole, fuse.State)));
        Assert.All(frames.SelectMany(f => f.Phases), p => Assert.True(p.ResidualAmps < 1e-6));
    }

    [Fact]
    public void With_the_key_feed_left_out_nothing_comes_on_and_the_box_sleeps_on()
    {
        var frame = With("open: key feed", Set("lock", "riding"), Set("front brake", "pressed"));
        Assert.False(frame.Controllers.Single().Awake);
        Assert.All(frame.Seen, s => Assert.Equal(Symbol.Dark, s.Symbol));
        Assert.All(frame.Controllers.Single().Lights, l => Assert.Equal(Symbol.Dark, l.Symbol));
        Assert.InRange(frame.Phases[0].Supply.Amps, 0.001, 0.006);
    }

    [Fact]
    public void With_the_boxs_supply_left_out_it_is_dead_and_lights_nothing()
    {
        var frame = With("open: box supply", Set("lock", "riding"));
        Assert.All(frame.Seen, s => Assert.Equal(Symbol.Dark, s.Symbol));
        Assert.False(frame.Controllers.Single().Awake);
    }

    [Fact]
    public void With_the_stop_lamp_feed_one_terminal_over_both_lights_are_right_the_lamp_is_dark_and_it_flashes_with_the_neighbour()
    {
        const string fault = "moved: stop lamp feed end box.X4 to box.X5";
        var braking = With(fault, Set("lock", "riding"), Set("front brake", "pressed"));
        Assert.Equal(Symbol.Lit, braking.Light("Z1"));
        Assert.Equal(Symbol.Lit, braking.Light("X4"));
        Assert.Equal(Symbol.Dark, braking.Symbol("rear cluster.stop"));
        Assert.Equal(Symbol.Flashing, With(fault, Set("lock", "riding"), Tap("left button")).Symbol("rear cluster.stop"));
    }

    [Fact]
    public void A_lead_held_to_ground_is_the_same_as_its_button()
    {
        var lead = Healthy with { Shorts = [new Short(At("box.Z1"), At("ground bar"), new(0.02))] };
        var held = new Rig(lead, new RigOptions { Healthy = Healthy }).Play([Set("lock", "riding")])[^1];
        var pressed = new Rig(Healthy).Play([Set("lock", "riding"), Set("front brake", "pressed")])[^1];
        Assert.Equal(pressed.Seen.Select(s => (s.Name, s.Symbol)), held.Seen.Select(s => (s.Name, s.Symbol)));
        Assert.Equal(pressed.Controllers.Single().Lights, held.Controllers.Single().Lights);
        Assert.Equal(pressed.Controllers.Single().Inputs, held.Controllers.Single().Inputs);
    }

    [Fact]
    public void A_lock_with_feed_and_ground_on_a_pair_joined_only_in_park_works_riding_and_blows_its_fuse_parked()
    {
        // Feed on r as drawn; somebody uses the spare lead u as a ground. Park joins r and u.
        var wrong = Healthy with { Wires = Healthy.Wires.Add(Healthy.Wire("steering ground")! with { Name = "lock ground", From = At("lock.u"), To = At("ground bar") }) };
        var frames = new Rig(wrong, new RigOptions { Healthy = Healthy }).Play([Set("lock", "riding"), Set("lock", "park")]);

        Assert.Equal(Symbol.Lit, frames[1].Symbol("rear cluster.tail"));
        Assert.Equal(FuseState.Whole, frames[1].Fuse("key fuse"));
        Assert.Equal(FuseState.Blown, frames[2].Fuse("key fuse"));
        Assert.Equal(FuseState.Whole, frames[2].Fuse("main fuse"));
        Assert.Contains("key fuse blew", frames[2].Events[0], StringComparison.Ordinal);
    }

    [Fact]
    public void With_the_tail_studs_lead_lost_all_lamps_on_it_fail_together_and_the_box_does_not()
    {
        var frame = With("lost: tail stud", Set("lock", "riding"), Set("front brake", "pressed"), Tap("left button"));
        Assert.All(frame.Seen, s => Assert.Equal(Symbol.Dark, s.Symbol));
        Assert.True(frame.Controllers.Single().Awake);
    }

    [Fact]
    public void With_the_ground_bars_lead_lost_everything_fails_together()
    {
        var frame = With("lost: ground bar", Set("lock", "riding"), Set("front brake", "pressed"));
        Assert.All(frame.Seen, s => Assert.Equal(Symbol.Dark, s.Symbol));
        Assert.False(frame.Controllers.Single().Awake);
    }

    [Fact]
    public void Whatever_is_wrong_it_settles_in_an_outcome_with_a_name_and_the_currents_sum_to_zero_at_every_point()
    {
        var wiring = Wiring.Of(Healthy);
        var faults = Catalogue.Of(Healthy);
        Assert.InRange(faults.Length, 80, 400);
        foreach (var fault in faults)
        {
            var faulty = wiring.With(fault);
            var settler = new Settler(faulty);
            var settled = settler.Settle(faulty.Start());
            foreach (var control in Enumerable.Range(0, faulty.Controls.Length))
            {
                settled = settler.Settle(Time.Moved(settled.State, control, 1));
                Assert.True(settled.Outcome != Outcome.Unsolved, fault.ToString());
                Assert.All(settled.Pictures, p => Assert.True(LargestSumAmps(faulty, p) < 1e-6, fault.ToString()));
            }
        }
    }

    private static double LargestSumAmps(Wiring wiring, Picture picture)
    {
        var sums = new double[wiring.NodeCount];
        for (var l = 0; l < wiring.Links.Length; l++)
        {
            sums[wiring.Links[l].From] -= picture.Amps[l];
            sums[wiring.Links[l].To] += picture.Amps[l];
        }

        return sums.Max(Math.Abs);
    }

    private static Frame With(string fault, params Operation[] operations)
    {
        var reading = FaultText.Read(fault, Healthy);
        Assert.Null(reading.Problem);
        return new Rig(Patch.Apply(Healthy, reading.Fault!), new RigOptions { Healthy = Healthy }).Play(operations)[^1];
    }
}
