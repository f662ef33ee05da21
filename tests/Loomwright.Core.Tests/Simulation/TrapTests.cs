using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Simulation;

/// <summary>What goes wrong in real looms and is easily got wrong in a program.</summary>
public class TrapTests
{
    private static Sketch Box => new Sketch().Battery().Box().BoxWired();

    private static Frame Riding(Sketch bench, params Operation[] then) => new Rig(bench.Loom).Play([Set("lock", "riding"), .. then])[^1];

    [Fact]
    public void With_the_common_ground_lost_current_goes_back_through_the_other_lamps()
    {
        // The check circuit with lamps: feed → one lamp → common; common → two lamps in series → ground.
        var loom = new Sketch().Battery()
            .Part("a", "lamp", ("filament", 21.0)).Part("b", "lamp", ("filament", 5.0)).Part("c", "lamp", ("filament", 5.0)).Part("common", "splice")
            .Wires(("battery.+", "a.+"), ("a.-", "common"), ("common", "b.+"), ("b.-", "c.+"), ("c.-", "battery.-")).Loom;

        var frame = new Rig(loom).Now;

        Assert.Equal(Symbol.Dark, frame.Symbol("a"));
        Assert.Equal(Symbol.Dim, frame.Symbol("b"));
        Assert.Equal(Symbol.Dim, frame.Symbol("c"));
        Assert.Equal(frame.Seen("a").Current.Amps, frame.Seen("c").Current.Amps, 1e-9);
    }

    [Theory]
    [InlineData("command", Symbol.Lit)]
    [InlineData("voltage", Symbol.Lit)]
    [InlineData("load current", Symbol.Dark)]
    public void With_nothing_on_an_output_its_light_tells_what_that_box_lets_it_tell(string follows, Symbol seen)
    {
        var bench = new Sketch().Battery().Box([("out", Of(("terminal", "X4"), ("when", "first")))], "key", ("lights", Of(("X4", follows)))).BoxWired();
        Assert.Equal(seen, Riding(bench, Set("first button", "pressed")).Light("X4"));
        Assert.Equal(Symbol.Dark, Riding(bench).Light("X4"));
    }

    [Fact]
    public void A_doubled_ground_keeps_the_lamp_lit_when_either_is_open()
    {
        Sketch Lamp(bool one, bool two)
        {
            var bench = new Sketch().Battery().Part("lamp", "lamp", ("filament", 21.0)).Part("stud", "ground stud").Wires(("battery.+", "lamp.+"), ("lamp.-", "stud"));
            bench = one ? bench.Wire("stud", "battery.-", "first") : bench;
            return two ? bench.Wire("stud", "battery.-", "second") : bench;
        }

        Assert.Equal(Symbol.Lit, new Rig(Lamp(true, true).Loom).Now.Symbol("lamp"));
        Assert.Equal(Symbol.Lit, new Rig(Lamp(true, false).Loom).Now.Symbol("lamp"));
        Assert.Equal(Symbol.Lit, new Rig(Lamp(false, true).Loom).Now.Symbol("lamp"));
        Assert.Equal(Symbol.Dark, new Rig(Lamp(false, false).Loom).Now.Symbol("lamp"));
    }

    [Fact]
    public void A_trip_that_ends_with_the_key_is_still_there_at_the_next_press()
    {
        var bench = new Sketch().Battery()
            .Box([("out", Of(("terminal", "X4"), ("when", "first"), ("limit", 2.0), ("trip ends", "key off")))]).BoxWired()
            .Part("lamp", "lamp", ("filament", 55.0)).Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar"));

        var frames = new Rig(bench.Loom).Play([Set("lock", "riding"), Set("first button", "pressed"), Set("first button", "released"), Set("first button", "pressed"), Set("lock", "off")]);

        Assert.Equal(OutputState.Tripped, frames[2].Output("X4").State);
        Assert.Contains("switched X4 (out) off", frames[2].Events.Single(), StringComparison.Ordinal);
        Assert.Equal(OutputState.Tripped, frames[3].Output("X4").State);
        Assert.Equal(OutputState.Tripped, frames[4].Output("X4").State);
        Assert.Empty(frames[4].Events);
        Assert.Equal(Symbol.Dark, frames[4].Symbol("lamp"));
        Assert.Equal(OutputState.Off, frames[5].Output("X4").State);
    }

    [Fact]
    public void A_trip_that_names_no_end_is_over_when_its_own_command_is()
    {
        var bench = new Sketch().Battery().Box(limitAmps: 2).BoxWired()
            .Part("lamp", "lamp", ("filament", 55.0)).Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar"));

        var frames = new Rig(bench.Loom).Play([Set("lock", "riding"), Set("first button", "pressed"), Set("first button", "released")]);

        Assert.Equal(OutputState.Tripped, frames[2].Output("X4").State);
        Assert.Equal(OutputState.Off, frames[3].Output("X4").State);
    }

    [Fact]
    public void A_blinking_lamp_has_two_pictures_and_is_called_flashing_not_dim()
    {
        var bench = new Sketch().Battery()
            .Box([("out", Of(("terminal", "X4"), ("when", "blinking first")))]).BoxWired()
            .Part("lamp", "lamp", ("filament", 21.0)).Part("steady", "lamp", ("filament", 5.0))
            .Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar"), ("main fuse.2", "steady.+"), ("steady.-", "ground bar"));

        var frame = Riding(bench, Set("first button", "pressed"));

        Assert.Equal(2, frame.Phases.Length);
        Assert.Equal(Symbol.Flashing, frame.Symbol("lamp"));
        Assert.Equal(Symbol.Lit, frame.Symbol("steady"));
        Assert.Equal(Symbol.Flashing, frame.Light("X4"));
        Assert.Equal(OutputState.Blinking, frame.Output("X4").State);
        Assert.True(frame.Phases[0].Supply.Amps > frame.Phases[1].Supply.Amps + 1.5);
        Assert.InRange(frame.Volts("lamp.+", 0), 12, 12.6);
        Assert.InRange(frame.Volts("lamp.+", 1), 0, 0.1);
    }

    [Theory]
    [InlineData(0.2, OutputState.Tripped)]
    [InlineData(0.5, OutputState.Blinking)]
    public void A_flash_shorter_than_the_delay_of_the_limit_does_not_trip_it(double seconds, OutputState state)
    {
        // 85 a minute: 0.35 s on.
        var bench = new Sketch().Battery()
            .Box([("out", Of(("terminal", "X4"), ("when", "blinking first"), ("limit", 2.0), ("trips after", seconds)))]).BoxWired()
            .Part("lamp", "lamp", ("filament", 55.0)).Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar"));
        Assert.Equal(state, Riding(bench, Set("first button", "pressed")).Output("X4").State);
    }

    [Fact]
    public void A_point_on_which_nothing_sits_floats_and_says_so()
    {
        var frame = new Rig(Box.Part("loose", "splice").Part("other", "splice").Wires(("loose", "other")).Loom).Now;
        Assert.True(frame.Floats("loose"));
        Assert.False(frame.Floats("box.X4"));
        Assert.False(frame.Floats("box.Z1"));
    }

    [Fact]
    public void An_input_with_its_lead_off_reads_idle_because_the_boxs_own_pull_holds_it()
    {
        var bare = new Sketch().Battery().Box("always").Wires(("battery.+", "box.B+"), ("box.B-", "battery.-"));
        var frame = new Rig(bare.Loom).Now;

        Assert.Equal(Outcome.Settled, frame.Outcome);
        Assert.True(frame.Controllers.Single().Awake);
        Assert.All(frame.Controllers.Single().Inputs, i => Assert.False(i.Active));
        Assert.InRange(frame.Volts("box.Z1"), 11, 12.6);
        Assert.InRange(frame.Volts("box.X1"), 0, 1);
        Assert.False(frame.Floats("box.Z1") || frame.Floats("box.X1"));
    }

    [Fact]
    public void An_output_that_trips_at_once_does_not_stand_a_cold_lamp_and_one_with_a_delay_does()
    {
        Frame Lamp(double seconds) => Riding(
            new Sketch().Battery().Box([("out", Of(("terminal", "X4"), ("when", "first"), ("limit", 15.0), ("trips after", seconds)))]).BoxWired()
                .Part("lamp", "lamp", ("filament", 55.0)).Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar")),
            Set("first button", "pressed"));

        Assert.Equal(OutputState.Tripped, Lamp(0.001).Output("X4").State);
        Assert.Equal(Symbol.Lit, Lamp(0.2).Symbol("lamp"));
    }

    [Fact]
    public void An_led_the_wrong_way_round_is_dark_and_lets_only_leakage_through()
    {
        var wrong = new Rig(new Sketch().Battery().Part("lamp", "lamp", ("led", 3.0)).Wires(("battery.+", "lamp.-"), ("lamp.+", "battery.-")).Loom).Now;
        Assert.Equal(Symbol.Dark, wrong.Symbol("lamp"));
        Assert.InRange(Math.Abs(wrong.Seen("lamp").Current.Amps), 1e-9, 1e-3);
    }

    [Fact]
    public void An_led_reversed_looks_like_one_left_unconnected_until_the_volts_across_it_are_measured()
    {
        Rig Lamp(params (string, string)[] wires) => new(new Sketch().Battery().Part("lamp", "lamp", ("led", 3.0)).Wires(wires).Loom);
        var reversed = Lamp(("battery.+", "lamp.-"), ("lamp.+", "battery.-"));
        var open = Lamp(("battery.+", "lamp.+"));

        Assert.Equal(Symbol.Dark, reversed.Now.Symbol("lamp"));
        Assert.Equal(Symbol.Dark, open.Now.Symbol("lamp"));
        Assert.False(reversed.Continuity(At("lamp.+"), At("lamp.-")));
        Assert.False(open.Continuity(At("lamp.+"), At("lamp.-")));
        Assert.Equal(-12.6, reversed.Volts(At("lamp.+"), At("lamp.-"))!.Value.Volts, 0.01);
        Assert.InRange(open.Volts(At("lamp.+"), At("battery.-"))!.Value.Volts, 12.5, 12.6);
        Assert.InRange(open.Volts(At("lamp.+"), At("lamp.-"))!.Value.Volts, 0, 11);
    }

    [Fact]
    public void The_leakage_of_an_output_that_is_off_does_not_light_a_filament()
    {
        var frame = Riding(Box.Part("lamp", "lamp", ("filament", 5.0)).Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar")));
        Assert.Equal(Symbol.Dark, frame.Symbol("lamp"));
        Assert.InRange(frame.Seen("lamp").Current.Amps, 1e-6, 1e-4);
    }

    [Fact]
    public void With_its_fuse_out_the_box_is_fed_backwards_through_an_output_that_gets_plus()
    {
        // No main fuse: nothing between battery and B+; a lead holds plus on the output X4.
        var loom = new Sketch().Battery().Box()
            .Part("lock", "switch", ("terminals", Marks("a", "b")), ("positions", Of(("off", Pairs()), ("riding", Pairs(("a", "b"))))))
            .Wires(("box.B-", "battery.-"), ("battery.+", "lock.a"), ("lock.b", "box.X4"), ("lock.b", "box.X1")).Loom;

        var frame = new Rig(loom).Do(Set("lock", "riding"));

        Assert.InRange(frame.Volts("box.B+"), 11.5, 12.3);
        Assert.True(frame.Controllers.Single().Awake);
    }

    [Fact]
    public void Battery_minus_and_a_stud_are_two_points_with_the_drop_of_the_lead_between_them()
    {
        var frame = Riding(
            Box.Part("lamp", "lamp", ("filament", 55.0)).Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar")), Set("first button", "pressed"));
        Assert.Equal(0, frame.Volts("battery.-"));
        Assert.Equal(frame.Amps("ground bar to battery.-") * 0.006, frame.Volts("ground bar"), 0.015);
        Assert.True(frame.Volts("ground bar") > 0.01);
    }

    [Fact]
    public void A_wrong_setting_changes_nothing_that_conducts_and_shows_only_when_the_box_acts_on_it()
    {
        var right = Box.Part("lamp", "lamp", ("filament", 21.0)).Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar")).Loom;
        var wrong = Patch.Apply(right, FaultText.Read("setting: box outputs/first out/limit 1 A", right).Fault!);

        Assert.Equal(Conducting(right), Conducting(wrong));
        var (healthy, faulty) = (new Rig(right), new Rig(wrong, new RigOptions { Healthy = right }));
        Assert.Equal(healthy.Do(Set("lock", "riding")).Phases[0].Potentials, faulty.Do(Set("lock", "riding")).Phases[0].Potentials);
        Assert.Equal(OutputState.On, healthy.Do(Set("first button", "pressed")).Output("X4").State);
        Assert.Equal(OutputState.Tripped, faulty.Do(Set("first button", "pressed")).Output("X4").State);
        Assert.Equal(Symbol.Lit, healthy.Now.Symbol("lamp"));
        Assert.Equal(Symbol.Dark, faulty.Now.Symbol("lamp"));

        static IEnumerable<object> Conducting(Loom loom) => Wiring.Of(loom).Links.Select(l => (object)(l.Owner, l.From, l.To, l.Curve, l.Off, l.Cold));
    }
}
