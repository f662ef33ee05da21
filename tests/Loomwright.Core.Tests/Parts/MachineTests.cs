using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Tests.Simulation;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Parts;

/// <summary>Starting, charging, and the switches the machine moves.</summary>
public sealed class MachineTests
{
    [Fact]
    public void A_textbook_starter_takes_200_amps_from_12_volts_through_10_and_50_milliohms()
    {
        // College Physics 2e, ch. 21: battery 0.0100 ohm, starter 0.0500 ohm, 12.0 V.
        var loom = new Sketch().Battery(12, 0.010).Part("starter", "starter", ("current", 200.0), ("rated volts", 10.0))
            .Wire("battery.+", "starter.+", "plus", 0.001, 95).Wire("starter.-", "battery.-", "minus", 0.001, 95).Loom;
        Assert.InRange(new Rig(loom).Now.Seen("starter").Current.Amps, 193, 200);
        Assert.Equal(Symbol.Turns, new Rig(loom).Now.Symbol("starter"));
    }

    [Fact]
    public void A_solenoid_pulls_in_holds_with_the_small_winding_and_lets_go_when_the_button_does()
    {
        var rig = new Rig(Solenoid().Loom);
        Assert.Equal(Symbol.Rests, rig.Now.Symbol("starter"));

        var cranking = rig.Do(Set("start", "pressed"));
        Assert.Equal(Symbol.Turns, cranking.Symbol("starter"));
        Assert.InRange(cranking.Amps("control"), 5, 8.5);

        var after = rig.Do(Set("start", "released"));
        Assert.Equal(Outcome.Settled, after.Outcome);
        Assert.Equal(Symbol.Rests, after.Symbol("starter"));
    }

    [Fact]
    public void A_solenoid_takes_its_full_pull_current_in_the_first_moment()
    {
        var still = Solenoid(stuckOpen: true).Loom;
        Assert.InRange(new Rig(still).Do(Set("start", "pressed")).Amps("control"), 30, 40);
    }

    [Fact]
    public void With_the_motor_lead_off_the_solenoid_never_pulls_in()
    {
        var loom = Solenoid().Loom;
        var frame = new Rig(Patch.Apply(loom, new Fault.Open("motor lead"))).Do(Set("start", "pressed"));
        Assert.DoesNotContain(frame.Relays, r => r.PulledIn);
    }

    [Fact]
    public void On_a_weak_battery_the_starter_relay_clicks_again_and_again_and_the_starter_does_not_turn()
    {
        var loom = new Sketch().Battery(12.2, 0.15).Part("start", "button").Part("starter relay", "starter relay").Part("starter", "starter")
            .Wires(("battery.+", "start.1"), ("start.2", "starter relay.50"), ("starter relay.31", "battery.-"))
            .Wire("battery.+", "starter relay.30", "plus", 0.4, 16).Wire("starter relay.45", "starter.+", "motor", 0.4, 16).Wire("starter.-", "battery.-", "minus", 0.4, 16).Loom;
        var frame = new Rig(loom).Do(Set("start", "pressed"));
        Assert.Equal(Outcome.Settled, frame.Outcome);

        var weaker = loom with { Parts = [.. loom.Parts.Select(p => p.Kind == "battery" ? p with { Settings = p.Settings.With("resistance", new Value.Number(0.6)) } : p)] };
        frame = new Rig(weaker).Do(Set("start", "pressed"));
        Assert.Equal(Outcome.SwitchesByItself, frame.Outcome);
        Assert.Contains("starter relay switches on and off by itself", frame.Events);
    }

    [Fact]
    public void Load_above_what_the_alternator_gives_at_idle_pulls_the_battery_down_and_riding_it_does_not()
    {
        // "test ride with voltmeter": 131 W of load, about 14.7 V riding, 11-something at idle.
        var loom = new Sketch().Battery(12.3, 0.03).Part("alternator", "alternator", ("power", 200.0), ("at idle", 0.35), ("regulates at", 14.7))
            .Part("heaters", "load", ("current", 7.5)).Part("headlamp", "lamp", ("filament", 35.0))
            .Wires(("alternator.B+", "battery.+"), ("alternator.-", "battery.-"), ("battery.+", "heaters.+"), ("heaters.-", "battery.-"), ("battery.+", "headlamp.+"), ("headlamp.-", "battery.-")).Loom;
        var rig = new Rig(loom);
        var riding = rig.Do(Set("engine", "riding")).Volts("battery.+");
        var idle = rig.Do(Set("engine", "idle")).Volts("battery.+");
        var stopped = rig.Do(Set("engine", "stopped")).Volts("battery.+");
        Assert.InRange(riding, 12.35, 14.7);
        Assert.InRange(idle, 11, 12.3);
        Assert.True(riding > idle && idle > stopped);
    }

    [Fact]
    public void An_alternator_gives_what_its_page_says()
    {
        Assert.Contains("17.6 A riding, 7.0 A at idle", Pages.Read("docs/models/alternator.md"), StringComparison.Ordinal);
        var loom = new Sketch().Part("battery", "battery", ("chemistry", "agm"), ("rest voltage", 9.0), ("resistance", 0.05), ("capacity", 200.0)).Part("alternator", "alternator").Wires(("alternator.B+", "battery.+"), ("alternator.-", "battery.-")).Loom;
        var rig = new Rig(loom);
        Assert.Equal(17.6, rig.Do(Set("engine", "riding")).Amps("alternator.B+ to battery.+"), 0.1);
        Assert.Equal(7.0, rig.Do(Set("engine", "idle")).Amps("alternator.B+ to battery.+"), 0.1);
        Assert.InRange(Math.Abs(rig.Do(Set("engine", "stopped")).Amps("alternator.B+ to battery.+")), 1e-4, 5e-4);
    }

    [Fact]
    public void An_oil_switch_that_follows_the_engine_puts_its_tell_tale_out_when_the_engine_runs()
    {
        var loom = new Sketch().Battery().Part("engine block", "ground body", ("body", "engine"))
            .Part("alternator", "alternator").Part("oil switch", "sensor switch", ("senses", "oil"), ("follows", "engine"), ("mounted on", "engine block"))
            .Part("oil light", "tell-tale", ("filament", 2.0))
            .Wires(("battery.+", "oil light.+"), ("oil light.-", "oil switch.1"), ("engine block", "battery.-"), ("alternator.B+", "battery.+"), ("alternator.-", "battery.-")).Loom;
        var rig = new Rig(loom);
        Assert.Single(rig.Now.Controls);
        Assert.Equal(Symbol.Lit, rig.Now.Symbol("oil light"));
        Assert.Equal(Symbol.Dark, rig.Do(Set("engine", "idle")).Symbol("oil light"));
    }

    [Fact]
    public void Carbon_in_the_neutral_switch_makes_the_neutral_lamp_glow_always_and_brighter_in_neutral()
    {
        // "Pesky neutral light problem fixed".
        var loom = new Sketch().Battery().Part("neutral switch", "sensor switch", ("senses", "neutral"), ("leaks", 30.0)).Part("lamp", "tell-tale", ("filament", 3.0))
            .Wires(("battery.+", "lamp.+"), ("lamp.-", "neutral switch.1"), ("neutral switch.2", "battery.-")).Loom;
        var rig = new Rig(loom);
        Assert.Equal(Symbol.Lit, rig.Now.Symbol("lamp"));
        Assert.Equal(Symbol.Dim, rig.Do(Set("neutral switch", "in gear")).Symbol("lamp"));
    }

    [Theory]
    [InlineData("opening", Symbol.Rests, Symbol.Rests)]
    [InlineData("closing", Symbol.Works, Symbol.Works)]
    public void One_broken_wire_stops_the_engine_with_one_kill_switch_and_leaves_it_running_with_the_other(string stopsBy, Symbol atRun, Symbol atStop)
    {
        // The closing kind grounds the coil's feed, which a resistor stands for here as a magneto would.
        var bench = new Sketch().Battery().Part("kill switch", "kill switch", ("stops by", stopsBy)).Part("coil", "ignition coil", ("current", 1.0));
        bench = stopsBy == "opening"
            ? bench.Wire("battery.+", "kill switch.1", "kill wire").Wires(("kill switch.2", "coil.15"), ("coil.1", "battery.-"))
            : bench.Part("magneto", "resistor", ("resistance", 2.0)).Wire("coil.15", "kill switch.1", "kill wire").Wires(("battery.+", "magneto.1"), ("magneto.2", "coil.15"), ("kill switch.2", "battery.-"), ("coil.1", "battery.-"));
        var loom = bench.Loom;
        var healthy = new Rig(loom);
        Assert.Equal(Symbol.Works, healthy.Now.Symbol("coil"));
        Assert.Equal(Symbol.Rests, healthy.Do(Set("kill switch", "stop")).Symbol("coil"));

        var broken = new Rig(Patch.Apply(loom, new Fault.Open("kill wire")));
        Assert.Equal(atRun, broken.Now.Symbol("coil"));
        Assert.Equal(atStop, broken.Do(Set("kill switch", "stop")).Symbol("coil"));
    }

    private static Sketch Solenoid(bool stuckOpen = false) => new Sketch().Battery(12.6, 0.010).Part("start", "button")
        .Part("solenoid", "solenoid", ("contact", stuckOpen ? 10.0 : 0.0005)).Part("starter", "starter")
        .Wire("battery.+", "start.1", "start feed", 0.2, 4).Wire("start.2", "solenoid.50", "control", 0.2, 4)
        .Wire("solenoid.31", "battery.-", "solenoid ground", 0.2, 4)
        .Wire("battery.+", "solenoid.30", "battery lead", 0.4, 25).Wire("solenoid.45", "starter.+", "motor lead", 0.2, 25).Wire("starter.-", "battery.-", "motor ground", 0.4, 25);
}
