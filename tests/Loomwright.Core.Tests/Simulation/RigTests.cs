using Loomwright.Design;
using Loomwright.Simulation;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Simulation;

public class RigTests
{
    private static Sketch OneLamp => new Sketch().Battery().Box().BoxWired()
        .Part("lamp", "lamp", ("filament", 21.0))
        .Part("work lamp", "lamp", ("filament", 35.0))
        .Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar"), ("box.X5", "work lamp.+"), ("work lamp.-", "ground bar"))
        .Function("first", "first button and lock is riding", "lamp", "lit", "lock", "first button", "second button")
        .Function("second", "second button and lock is riding", "work lamp", "lit", "lock", "first button", "second button");

    [Fact]
    public void Nothing_is_on_and_only_the_standby_current_flows_before_the_key_is_turned()
    {
        var frame = new Rig(OneLamp.Loom).Now;

        Assert.Equal(Outcome.Settled, frame.Outcome);
        Assert.False(frame.Controllers.Single().Awake);
        Assert.All(frame.Seen, s => Assert.Equal(Symbol.Dark, s.Symbol));
        Assert.All(frame.Controllers.Single().Lights, l => Assert.Equal(Symbol.Dark, l.Symbol));
        Assert.InRange(frame.Phases.Single().Supply.Amps, 0.0018, 0.0030);
    }

    [Fact]
    public void The_key_wakes_the_box_and_a_button_lights_its_lamp_and_both_its_lights()
    {
        var frames = new Rig(OneLamp.Loom).Play([Set("lock", "riding"), Tap("first button")]);

        Assert.Equal(["power connected", "lock → riding", "first button pressed", "first button let go"], frames.Select(f => f.Step));
        Assert.True(frames[1].Controllers.Single().Awake);
        Assert.Equal(Symbol.Lit, frames[1].Light("X1"));
        Assert.Equal(Symbol.Dark, frames[1].Symbol("lamp"));

        var pressed = frames[2];
        Assert.Equal(Symbol.Lit, pressed.Symbol("lamp"));
        Assert.Equal(1, pressed.Seen("lamp").LightShare!.Value, 1e-9);
        Assert.Equal(Symbol.Dark, pressed.Symbol("work lamp"));
        Assert.Equal(Symbol.Lit, pressed.Light("Z1"));
        Assert.Equal(Symbol.Lit, pressed.Light("X4"));
        Assert.Equal(Symbol.Dark, pressed.Light("X5"));
        Assert.Equal(OutputState.On, pressed.Output("X4").State);
        Assert.InRange(pressed.Output("X4").Current.Amps, 1.7, 1.85);

        Assert.Equal(Symbol.Dark, frames[3].Symbol("lamp"));
    }

    [Fact]
    public void Current_in_a_wire_is_positive_from_its_first_end_and_its_drop_has_the_same_sign()
    {
        var rig = new Rig(OneLamp.Loom);
        rig.Do(Set("lock", "riding"));
        var frame = rig.Do(Set("first button", "pressed"));

        var feed = frame.Phases[0].Wires.Single(w => w.Wire == "box.X4 to lamp.+");
        Assert.InRange(feed.Current.Amps, 1.7, 1.85);
        Assert.True(feed.Drop.Volts > 0);
        Assert.Equal(frame.Volts("box.X4") - frame.Volts("lamp.+"), feed.Drop.Volts, 1e-12);
        Assert.Equal(0, frame.Volts("battery.-"));
    }

    [Fact]
    public void Currents_sum_to_zero_at_the_ground_bar()
    {
        var rig = new Rig(OneLamp.Loom);
        rig.Do(Set("lock", "riding"));
        rig.Do(Set("first button", "pressed"));
        var frame = rig.Do(Set("second button", "pressed"));

        var into = frame.Phases[0].Wires.Sum(w =>
            w.Wire.EndsWith("to ground bar", StringComparison.Ordinal) ? w.Current.Amps
            : w.Wire.StartsWith("ground bar", StringComparison.Ordinal) ? -w.Current.Amps : 0);
        Assert.Equal(0, into, 1e-9);
        Assert.True(frame.Phases[0].ResidualAmps < 1e-6);
    }

    [Fact]
    public void A_control_or_position_that_is_not_there_changes_nothing_and_says_what_there_is()
    {
        var rig = new Rig(OneLamp.Loom);
        rig.Do(Set("lock", "riding"));

        var frame = rig.Do(Set("lock", "sideways"));

        Assert.Equal(["lock has no position sideways; it has off, riding"], frame.Events);
        Assert.True(frame.Controllers.Single().Awake);
        Assert.Contains("there are lock, first button, second button", rig.Do(Tap("horn button")).Events.Single(), StringComparison.Ordinal);
        Assert.Contains("stays where it is put", rig.Do(Tap("lock")).Events.Single(), StringComparison.Ordinal);
        Assert.Null(rig.Cannot(Tap("first button")));
    }

    [Fact]
    public void Reset_is_where_it_began_and_the_same_operations_give_the_same_frames()
    {
        var rig = new Rig(OneLamp.Loom);
        Operation[] operations = [Set("lock", "riding"), Tap("first button"), Wait(3)];
        var first = rig.Play(operations);
        var second = rig.Play(operations);

        Assert.Equal(TimeSpan.FromSeconds(3), first[^1].Time);
        Assert.Equal(first.Select(f => f.Phases[0].Supply), second.Select(f => f.Phases[0].Supply));
        Assert.Equal(first.Select(f => (f.Step, f.Time, f.Outcome)), second.Select(f => (f.Step, f.Time, f.Outcome)));
    }

    [Fact]
    public void A_meter_reads_the_drop_between_two_points_and_its_sign_follows_its_leads()
    {
        var rig = new Rig(OneLamp.Loom);
        rig.Do(Set("lock", "riding"));
        var frame = rig.Do(Set("first button", "pressed"));

        var read = rig.Volts(At("lamp.+"), At("lamp.-"))!.Value.Volts;
        Assert.Equal(frame.Seen("lamp").Voltage.Volts, read, 1e-5);
        Assert.Equal(-read, rig.Volts(At("lamp.-"), At("lamp.+"))!.Value.Volts, 1e-9);
        Assert.Null(rig.Volts(At("lamp.+"), At("nowhere.1")));
    }

    [Fact]
    public void Ohms_are_read_with_the_supply_off_and_an_open_switch_beeps_only_once_closed()
    {
        var rig = new Rig(OneLamp.Loom);
        Assert.False(rig.Continuity(At("lock.a"), At("lock.b")));
        rig.Do(Set("lock", "riding"));
        Assert.True(rig.Continuity(At("lock.a"), At("lock.b")));

        // A cold 21 W filament: 12²/(14·21) Ω, read on its own with its feed open at the box.
        Assert.InRange(rig.Ohms(At("lamp.+"), At("lamp.-"))!.Value.Ohms, 0.45, 0.55);
        Assert.Equal(0, rig.Ohms(At("lamp.+"), At("lamp.+"))!.Value.Ohms);
    }

    [Fact]
    public void The_meter_is_a_branch_so_an_open_contact_reads_the_little_its_ten_megohms_leave()
    {
        // Check value: 12.6 V through an open contact of 1 GΩ into 10 MΩ.
        var loom = new Sketch().Battery(12.6).Part("switch", "button").Wires(("battery.+", "switch.1")).Loom;
        var read = new Rig(loom).Volts(At("switch.2"), At("battery.-"))!.Value.Volts;
        Assert.Equal(12.6 * 10e6 / (1e9 + 10e6), read, 1e-6);
    }
}
