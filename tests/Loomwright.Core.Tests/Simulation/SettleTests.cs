using Loomwright.Design;
using Loomwright.Simulation;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Simulation;

public class SettleTests
{
    [Fact]
    public void A_short_to_ground_blows_the_fuse_before_it_and_the_box_loses_its_supply()
    {
        var bench = new Sketch().Battery().Box().BoxWired().Wires(("main fuse.2", "ground bar"));

        var frame = new Rig(bench.Loom).Now;

        Assert.Equal(FuseState.Blown, frame.Fuse("main fuse"));
        Assert.Contains("main fuse blew", frame.Events[0], StringComparison.Ordinal);
        Assert.False(frame.Controllers.Single().Awake);
    }

    [Fact]
    public void Of_two_fuses_in_a_row_the_one_that_opens_sooner_opens_and_the_other_stays_whole()
    {
        var loom = new Sketch().Battery().Part("main", "fuse", ("rating", 30.0)).Part("branch", "fuse", ("rating", 5.0))
            .Wires(("battery.+", "main.1"), ("main.2", "branch.1"), ("branch.2", "battery.-")).Loom;

        var frame = new Rig(loom).Now;

        Assert.Equal(FuseState.Blown, frame.Fuse("branch"));
        Assert.Equal(FuseState.Whole, frame.Fuse("main"));
    }

    [Theory]
    [InlineData(2.4, FuseState.Whole)]
    [InlineData(3.6, FuseState.Overloaded)]
    [InlineData(4.5, FuseState.Blown)]
    public void A_fuse_is_whole_to_its_rating_overloaded_to_135_percent_and_opens_above(double amps, FuseState state)
    {
        var loom = new Sketch().Battery(12.0, 0.001).Part("fuse", "fuse", ("rating", 3.0)).Part("horn", "horn", ("current", amps))
            .Wires(("battery.+", "fuse.1"), ("fuse.2", "horn.1"), ("horn.2", "battery.-")).Loom;
        Assert.Equal(state, new Rig(loom).Now.Fuse("fuse"));
    }

    [Fact]
    public void A_blown_fuse_stays_blown_until_power_is_connected_anew()
    {
        var bench = new Sketch().Battery().Part("fuse", "fuse", ("rating", 3.0)).Part("switch", "button")
            .Wires(("battery.+", "fuse.1"), ("fuse.2", "switch.1"), ("switch.2", "battery.-"));
        var rig = new Rig(bench.Loom);

        Assert.Equal(FuseState.Blown, rig.Do(Tap("switch")).Fuse("fuse"));
        Assert.Equal(FuseState.Whole, rig.Reset().Fuse("fuse"));
    }

    [Fact]
    public void More_than_the_box_carries_together_switches_everything_off()
    {
        var bench = new Sketch().Battery()
            .Box([("a", Of(("terminal", "X4"), ("when", "key"))), ("b", Of(("terminal", "X5"), ("when", "key")))], "key", ("total limit", 6.0)).BoxWired()
            .Part("one", "lamp", ("filament", 55.0)).Part("two", "lamp", ("filament", 55.0))
            .Wires(("box.X4", "one.+"), ("one.-", "ground bar"), ("box.X5", "two.+"), ("two.-", "ground bar"));

        var frame = new Rig(bench.Loom).Do(Set("lock", "riding"));

        Assert.All(frame.Controllers.Single().Outputs, o => Assert.Equal(OutputState.Tripped, o.State));
        Assert.Contains("switched everything off", frame.Events.Single(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_latch_holds_after_the_button_is_let_go_toggles_at_the_next_press_and_ends_with_its_time()
    {
        var bench = new Sketch().Battery().Box([("beacon", Of(("terminal", "X4"), ("when", "latching(first; until first, 45 s)")))]).BoxWired()
            .Part("lamp", "lamp", ("filament", 21.0)).Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar"));
        var rig = new Rig(bench.Loom);
        rig.Do(Set("lock", "riding"));

        var on = rig.Do(Tap("first button"));
        Assert.Equal(Symbol.Lit, on.Symbol("lamp"));
        Assert.Equal(["beacon"], on.Controllers.Single().Remembers);
        Assert.Equal(Symbol.Dark, rig.Do(Tap("first button")).Symbol("lamp"));

        rig.Do(Tap("first button"));
        Assert.Equal(Symbol.Lit, rig.Do(Wait(44.9)).Symbol("lamp"));
        var after = rig.Do(Wait(1));
        Assert.Equal(Symbol.Dark, after.Symbol("lamp"));
        Assert.Empty(after.Controllers.Single().Remembers);
    }

    [Fact]
    public void Run_outs_on_the_way_through_a_wait_are_settled_one_after_another()
    {
        var bench = new Sketch().Battery()
            .Box([("a", Of(("terminal", "X4"), ("when", "key delayed 2 s"))), ("b", Of(("terminal", "X5"), ("when", "key delayed 5 s")))]).BoxWired();

        var frames = new Rig(bench.Loom).Play([Set("lock", "riding"), Wait(10)]);

        Assert.Equal([0, 0, 2, 5, 10], frames.Select(f => f.Time.TotalSeconds));
        Assert.Equal([OutputState.Off, OutputState.On, OutputState.On], frames.Skip(2).Select(f => f.Output("X5").State));
        Assert.Equal(OutputState.On, frames[2].Output("X4").State);
    }

    [Fact]
    public void A_sleeping_box_forgets_and_the_lamp_stays_dark_when_the_key_comes_back()
    {
        var bench = new Sketch().Battery().Box([("beacon", Of(("terminal", "X4"), ("when", "latching(first; until first)")))]).BoxWired()
            .Part("lamp", "lamp", ("filament", 21.0)).Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar"));
        var frames = new Rig(bench.Loom).Play([Set("lock", "riding"), Set("first button", "pressed"), Set("first button", "released"), Set("lock", "off"), Set("lock", "riding")]);

        Assert.Equal([Symbol.Lit, Symbol.Dark, Symbol.Dark], frames.Skip(3).Select(f => f.Symbol("lamp")));
    }

    [Fact]
    public void An_output_wired_to_put_out_its_own_input_switches_on_and_off_by_itself()
    {
        var bench = new Sketch().Battery().Part("box", "load controller",
            ("plugs", Of(("P", Marks("B+", "B-")), ("X", Marks("X1", "X2")))), ("supply", "B+"), ("ground", "B-"),
            ("inputs", Of(("sense", Of(("terminal", "X1"), ("active", "plus"))))),
            ("outputs", Of(("out", Of(("terminal", "X2"), ("when", "not sense"))))))
            .Wires(("battery.+", "box.B+"), ("box.B-", "battery.-"), ("box.X2", "box.X1"));

        var frame = new Rig(bench.Loom).Now;

        Assert.Equal(Outcome.SwitchesByItself, frame.Outcome);
        Assert.Equal(["box X2 (out) switches on and off by itself"], frame.Events);
    }

    [Fact]
    public void Two_outputs_that_each_put_out_the_other_are_a_race_only_the_order_decides()
    {
        var bench = new Sketch().Battery().Part("box", "load controller",
            ("plugs", Of(("P", Marks("B+", "B-")), ("X", Marks("X1", "X2", "X3", "X4")))), ("supply", "B+"), ("ground", "B-"),
            ("inputs", Of(("a", Of(("terminal", "X1"), ("active", "plus"))), ("b", Of(("terminal", "X2"), ("active", "plus"))))),
            ("outputs", Of(("a out", Of(("terminal", "X3"), ("when", "not b"))), ("b out", Of(("terminal", "X4"), ("when", "not a"))))))
            .Wires(("battery.+", "box.B+"), ("box.B-", "battery.-"), ("box.X3", "box.X1"), ("box.X4", "box.X2"));

        Assert.Equal(Outcome.Race, new Rig(bench.Loom).Now.Outcome);
    }

    [Theory]
    [InlineData("key", Outcome.UndefinedInput)]
    [InlineData("always", Outcome.Settled)]
    public void An_input_between_its_thresholds_matters_only_when_the_two_readings_end_apart(string when, Outcome outcome)
    {
        Assert.Equal(outcome, new Rig(Divided(when)).Now.Outcome);
    }

    // 12.6 V through 200 Ω against the input's own 100 Ω pull: 4.2 V, between its 3 V and 6 V.
    private static Loom Divided(string when) => new Sketch().Battery().Part("box", "load controller",
            ("plugs", Of(("P", Marks("B+", "B-")), ("X", Marks("X1", "X2")))), ("supply", "B+"), ("ground", "B-"),
            ("inputs", Of(("key", Of(("terminal", "X1"), ("active", "plus"), ("pull", 100.0), ("low", 3.0), ("high", 6.0))))),
            ("outputs", Of(("out", Of(("terminal", "X2"), ("when", when))))))
            .Part("lamp", "horn", ("current", 0.06))
            .Wires(("battery.+", "box.B+"), ("box.B-", "battery.-"), ("battery.+", "lamp.1"), ("lamp.2", "box.X1")).Loom;

    [Fact]
    public void What_the_supply_delivers_is_what_the_loads_the_wires_and_the_contacts_turn_into_heat()
    {
        var bench = new Sketch().Battery(12.6).Part("lamp", "lamp", ("filament", 55.0)).Part("fuse", "fuse", ("rating", 10.0))
            .Wires(("battery.+", "fuse.1"), ("fuse.2", "lamp.+"), ("lamp.-", "battery.-"));
        var wiring = Wiring.Of(bench.Loom);
        var picture = new Settler(wiring).Settle(wiring.Start()).Pictures.Single();

        var watts = wiring.Links.Select((link, l) => picture.Across(link) * picture.Amps[l]).ToList();
        var delivered = -watts[wiring.Supplies.Single()];

        Assert.True(delivered > 50);
        Assert.Equal(0, watts.Sum(), 1e-9 * delivered);
    }

    [Fact]
    public void Settling_the_same_state_gives_the_same_numbers_to_the_last_digit()
    {
        var bench = new Sketch().Battery().Box().BoxWired().Part("lamp", "lamp", ("filament", 55.0)).Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar"));
        var wiring = Wiring.Of(bench.Loom);
        var settler = new Settler(wiring);
        var state = Time.Moved(wiring.Start(), 0, 1);

        var first = settler.Settle(state);
        settler.Settle(wiring.Start());
        var second = settler.Settle(state);

        Assert.Equal(first.State, second.State);
        Assert.Equal(first.State.GetHashCode(), second.State.GetHashCode());
        Assert.Equal(first.Pictures.Single().Volts, second.Pictures.Single().Volts);
    }
}
