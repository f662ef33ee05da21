using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Tests.Simulation;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Parts;

public sealed class RelayTests
{
    [Fact]
    public void A_relay_that_has_pulled_in_stays_in_at_volts_that_would_not_pull_it_in()
    {
        // Through as many ohms as its own coil it gets half the battery's volts: below pull-in, above drop-out.
        var rig = new Rig(Lamp(new Sketch().Battery()
            .Part("lock", "switch", ("terminals", Marks("a", "b", "c")), ("positions", Of(("off", Pairs()), ("half", Pairs(("a", "b"))), ("full", Pairs(("a", "c"))))))
            .Part("half", "horn", ("current", 12.0 / 85))
            .Wires(("battery.+", "lock.a"), ("lock.b", "half.1"), ("half.2", "relay.86"), ("lock.c", "relay.86"))).Loom);

        Assert.Equal(Symbol.Dark, rig.Do(Set("lock", "half")).Symbol("lamp"));
        Assert.Equal(Symbol.Lit, rig.Do(Set("lock", "full")).Symbol("lamp"));
        Assert.Equal(Symbol.Lit, rig.Do(Set("lock", "half")).Symbol("lamp"));
        Assert.InRange(rig.Now.Volts("relay.86"), 5.5, 6.5);
        Assert.Equal(Symbol.Dark, rig.Do(Set("lock", "off")).Symbol("lamp"));
        Assert.Equal(Symbol.Dark, rig.Do(Set("lock", "half")).Symbol("lamp"));
    }

    [Fact]
    public void A_relay_is_heard_when_it_pulls_in_and_when_it_lets_go()
    {
        var rig = new Rig(Lamp(new Sketch().Battery().Part("button", "button").Wires(("battery.+", "button.1"), ("button.2", "relay.86"))).Loom);

        var pressed = rig.Do(Set("button", "pressed"));
        Assert.Equal(["relay clicks: it pulls in"], pressed.Events);
        Assert.Equal([new RelaySeen("relay", true)], pressed.Relays);
        Assert.Equal(["relay clicks: it lets go"], rig.Do(Set("button", "released")).Events);
    }

    [Fact]
    public void A_relay_that_cuts_off_its_own_coil_buzzes()
    {
        var loom = new Sketch().Battery().Part("buzzer", "relay", ("contacts", "changeover"))
            .Wires(("battery.+", "buzzer.30"), ("buzzer.87a", "buzzer.86"), ("buzzer.85", "battery.-")).Loom;

        var frame = new Rig(loom).Now;

        Assert.Equal(Outcome.SwitchesByItself, frame.Outcome);
        Assert.Equal(["buzzer switches on and off by itself"], frame.Events);
    }

    [Fact]
    public void A_relay_that_feeds_its_own_coil_holds_itself_until_the_stop_button_opens()
    {
        var rig = new Rig(Lamp(new Sketch().Battery().Part("start", "button").Part("stop", "button", ("rests", "closed"))
            .Wires(("battery.+", "stop.1"), ("stop.2", "start.1"), ("start.2", "relay.86"), ("relay.87", "start.2")), feed: "stop.2").Loom);

        rig.Do(Set("start", "pressed"));
        Assert.Equal(Symbol.Lit, rig.Do(Set("start", "released")).Symbol("lamp"));
        rig.Do(Set("stop", "pressed"));
        Assert.Equal(Symbol.Dark, rig.Do(Set("stop", "released")).Symbol("lamp"));
    }

    [Theory]
    [InlineData("nothing", Symbol.Lit, FuseState.Whole)]
    [InlineData("resistor", Symbol.Lit, FuseState.Whole)]
    [InlineData("diode", Symbol.Dark, FuseState.Blown)]
    public void Only_a_relay_with_a_coil_diode_minds_its_coil_leads_exchanged(string across, Symbol lamp, FuseState fuse)
    {
        Loom Bench((string, string) plus, (string, string) minus) => new Sketch().Battery().Part("fuse", "fuse", ("rating", 10.0))
            .Part("relay", "relay", ("across coil", across)).Part("lamp", "lamp", ("filament", 21.0))
            .Wires(("battery.+", "fuse.1"), ("fuse.2", "relay.30"), plus, minus, ("relay.87", "lamp.+"), ("lamp.-", "battery.-")).Loom;

        Assert.Equal(Symbol.Lit, new Rig(Bench(("fuse.2", "relay.86"), ("relay.85", "battery.-"))).Now.Symbol("lamp"));
        var crossed = new Rig(Bench(("fuse.2", "relay.85"), ("relay.86", "battery.-"))).Now;
        Assert.Equal(lamp, crossed.Symbol("lamp"));
        Assert.Equal(fuse, crossed.Fuse("fuse"));
    }

    [Fact]
    public void A_worn_button_makes_the_horn_feeble_and_a_relay_cures_it()
    {
        // "Install switched relay for dual horns": 12 V in, 9 to 10 V out is not unusual.
        var worn = new Sketch().Battery().Part("button", "button", ("contact", 0.8)).Part("horn", "horn")
            .Wires(("battery.+", "button.1"), ("button.2", "horn.1"), ("horn.2", "battery.-"));
        Assert.InRange(new Rig(worn.Loom).Do(Set("button", "pressed")).Seen("horn").Voltage.Volts, 9, 10.1);

        var cured = new Sketch().Battery().Part("button", "button", ("contact", 0.8)).Part("horn", "horn").Part("relay", "relay")
            .Wires(("battery.+", "button.1"), ("button.2", "relay.86"), ("relay.85", "battery.-"), ("battery.+", "relay.30"), ("relay.87", "horn.1"), ("horn.2", "battery.-"));
        Assert.True(new Rig(cured.Loom).Do(Set("button", "pressed")).Seen("horn").Voltage.Volts > 12);
    }

    [Fact]
    public void A_relay_behind_a_blinking_output_follows_its_flashes()
    {
        var bench = Lamp(new Sketch().Battery().Box([("out", Of(("terminal", "X4"), ("when", "blinking key")))]).BoxWired().Wires(("box.X4", "relay.86")));

        var frame = new Rig(bench.Loom).Do(Set("lock", "riding"));

        Assert.Equal(Symbol.Flashing, frame.Symbol("lamp"));
        Assert.Equal(Outcome.Settled, frame.Outcome);
    }

    [Fact]
    public void A_dead_relay_never_pulls_in()
    {
        var loom = Lamp(new Sketch().Battery().Wires(("battery.+", "relay.86"))).Loom;
        Assert.Equal(Symbol.Lit, new Rig(loom).Now.Symbol("lamp"));

        var dead = new Rig(Patch.Apply(loom, new Fault.Dead("relay")), new RigOptions { Healthy = loom }).Now;
        Assert.Equal(Symbol.Dark, dead.Symbol("lamp"));
        Assert.Empty(dead.Events);
    }

    // A relay with its coil to ground that switches a lamp.
    private static Sketch Lamp(Sketch bench, string feed = "battery.+") => bench.Part("relay", "relay").Part("lamp", "lamp", ("filament", 21.0))
        .Wires(("relay.85", "battery.-"), (feed, "relay.30"), ("relay.87", "lamp.+"), ("lamp.-", "battery.-"));
}
