using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Tests.Simulation;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Faults;

public class FaultTests
{
    private static readonly ImmutableArray<ImmutableArray<int>> Scripts = [[], [0], [0, 1], [0, 2], [0, 1, 2]];

    /// <summary>Every kind of fault finds something to bite on here: plugs with neighbours, two grounds, an LED, a filament, a horn.</summary>
    internal static Loom Sample { get; } = new Sketch().Battery().Box().BoxWired()
        .Part("lamp", "lamp", ("filament", 21.0))
        .Part("led", "lamp", ("led", 3.0))
        .Part("horn", "horn")
        .Part("tail stud", "ground stud")
        .Wires(
            ("box.X4", "lamp.+"), ("lamp.-", "tail stud"), ("box.X5", "led.+"), ("led.-", "tail stud"), ("tail stud", "ground bar"),
            ("main fuse.2", "horn.1"), ("horn.2", "tail stud"))
        .Function("first", "first button and lock is riding", "lamp", "lit", "lock", "first button", "second button")
        .Function("second", "second button and lock is riding", "led", "lit", "lock", "first button", "second button")
        .Loom;

    /// <summary>The list, and faults that read well but are not worth listing.</summary>
    public static TheoryData<string> Every => [.. Catalogue.Of(Sample).Select(f => f.ToString()), "short: box.X4 to battery.-", "short: box.B+ to box.Z1", "setting: box resets below 15 V", "setting: box outputs/first out/limit 0.5 A", "setting: box awake first", "high: tail stud 0.5 ohm"];

    [Theory]
    [MemberData(nameof(Every))]
    public void Compiling_the_patched_design_equals_patching_the_compiled_design(string id) => HoldsTheLaw(Sample, FaultText.Read(id, Sample).Fault!);

    [Fact]
    public void So_it_does_for_every_fault_of_the_example() => Assert.All(Catalogue.Of(KittiwakeBenchTests.Healthy), f => HoldsTheLaw(KittiwakeBenchTests.Healthy, f));

    [Fact]
    public void So_it_does_for_any_two_faults_of_one_part()
    {
        string[] ids = ["dead: led", "reversed: led", "dead: box", "reversed: box", "dead: box.X4", "dead: box.X5", "stuck: lock at off", "stuck: lock at riding", "leak: lock 30 ohm", "dead: lock", "setting: battery rest voltage 11.8 V", "dead: battery"];
        var faults = ids.Select(id => FaultText.Read(id, Sample).Fault!).ToList();
        Assert.All(
            from one in faults
            from other in faults
            where one != other && one.Subject == other.Subject && other is not Fault.Setting
            select (one, other),
            pair => HoldsTheLaw(Sample, pair.one, pair.other));
    }

    [Theory]
    [InlineData("44", "short: spoiler plus end to spoiler minus end")]
    [InlineData("52", "moved: second strap end engine to starter relay.M")]
    [InlineData("18", "high: battery plus 0.2 ohm")]
    public void Bare_spare_ends_straps_on_a_starters_post_and_joints_only_a_starter_feels_are_listed(string number, string id)
    {
        var loom = Cases.Folders.Loom(number);
        var fault = Assert.Single(Catalogue.Of(loom), f => f.ToString() == id);
        Assert.Equal(fault, FaultText.Read(id, loom).Fault);
    }

    internal static void HoldsTheLaw(Loom loom, params Fault[] faults)
    {
        var patched = Wiring.Of(faults.Aggregate(loom, Patch.Apply));
        var edited = faults.Aggregate(Wiring.Of(loom), WiringPatch.With);

        foreach (var script in Scripts)
        {
            var (one, other) = (End(patched, script), End(edited, script));
            Assert.NotEqual(Outcome.Unsolved, one.Outcome);
            Assert.Equal(one.Outcome, other.Outcome);
            Assert.Equal(one.Events, other.Events);
            Assert.Equal(one.State.Blown, other.State.Blown);
            Assert.Equal(one.Pictures.Length, other.Pictures.Length);
            foreach (var (a, b) in one.Pictures.Zip(other.Pictures))
            {
                Same(patched, a, edited, b);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void An_id_reads_back_as_the_fault_it_names(string id) => Assert.Equal(id, FaultText.Read(id, Sample).Fault?.ToString());

    [Fact]
    public void The_list_is_in_a_fixed_order_and_holds_every_kind()
    {
        var ids = Catalogue.Of(Sample).Select(f => f.ToString()).ToList();

        Assert.Equal(ids, Catalogue.Of(Sample).Select(f => f.ToString()));
        Assert.Equal(ids.Count, ids.Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(["open", "moved", "swapped", "lost", "dead", "reversed", "short", "high", "stuck", "leak", "setting"], ids.Select(i => i.Split(':')[0]).Distinct());
        Assert.Contains("moved: box.X4 to lamp.+ end box.X4 to box.X5", ids);
        Assert.Contains("moved: box.X4 to lamp.+ end box.X4 to box.X3", ids);
        Assert.DoesNotContain("moved: box.X4 to lamp.+ end box.X4 to box.Z1", ids);
        Assert.Contains("swapped: box.X4 with box.X5", ids);
        Assert.Contains("lost: tail stud", ids);
        Assert.Contains("dead: horn", ids);
        Assert.Contains("reversed: led", ids);
        Assert.DoesNotContain("reversed: lamp", ids);
        Assert.Contains("dead: main fuse", ids);
        Assert.Contains("dead: box.X4", ids);
        Assert.Contains("short: box.X4 to box.B+", ids);
        Assert.Contains("high: box.X4 to lamp.+ 5 ohm", ids);
        Assert.Contains("setting: battery rest voltage 11.8 V", ids);
        Assert.Contains("setting: box inputs/first/active plus", ids);
    }

    [Fact]
    public void A_move_between_points_that_other_wires_join_is_no_fault()
    {
        // Both ends of the lamp hang on one stud already; its ground lead moved to its other lead changes nothing.
        var loom = new Sketch().Battery().Part("lamp", "lamp", ("filament", 5.0)).Part("stud", "ground stud")
            .Wire("lamp.-", "stud", "one").Wire("lamp.+", "stud", "two").Wire("lamp.-", "battery.-", "three").Loom;
        Assert.DoesNotContain("moved: three end lamp.- to lamp.+", Catalogue.Of(loom).Select(f => f.ToString()));
        Assert.Contains("moved: two end lamp.+ to lamp.-", Catalogue.Of(loom).Select(f => f.ToString()));
    }

    [Fact]
    public void A_swap_is_made_in_one_go_and_is_not_two_moves_one_after_the_other()
    {
        var swapped = Patch.Apply(Sample, new Fault.Swapped(At("box.X4"), At("box.X5")));
        Assert.Equal("box.X5", swapped.Wire("box.X4 to lamp.+")!.From.ToString());
        Assert.Equal("box.X4", swapped.Wire("box.X5 to led.+")!.From.ToString());
        Assert.Equal(Sample.Wires, Patch.Apply(swapped, new Fault.Swapped(At("box.X5"), At("box.X4"))).Wires);
    }

    [Fact]
    public void A_lost_ground_is_the_studs_own_lead_towards_battery_minus_and_no_other()
    {
        var lost = Patch.Apply(Sample, new Fault.Lost("tail stud"));
        Assert.Equal(["tail stud to ground bar"], Sample.Wires.Except(lost.Wires).Select(w => w.Name));
        lost = Patch.Apply(Sample, new Fault.Lost("ground bar"));
        Assert.Equal(["ground bar to battery.-"], Sample.Wires.Except(lost.Wires).Select(w => w.Name));
    }

    [Fact]
    public void With_the_tail_studs_lead_lost_every_load_on_that_stud_fails_together()
    {
        var rig = new Rig(Patch.Apply(Sample, new Fault.Lost("tail stud")), new RigOptions { Healthy = Sample });
        rig.Do(Set("lock", "riding"));
        rig.Do(Set("first button", "pressed"));
        var frame = rig.Do(Set("second button", "pressed"));

        Assert.Equal(Symbol.Dark, frame.Symbol("lamp"));
        Assert.Equal(Symbol.Dark, frame.Symbol("led"));
        Assert.Equal(Symbol.Silent, frame.Symbol("horn"));
        Assert.Equal(Symbol.Lit, frame.Light("X4"));
        Assert.Equal(Symbol.Lit, frame.Light("X5"));
    }

    [Fact]
    public void With_its_wire_one_terminal_over_the_lights_are_right_the_lamp_is_dark_and_follows_the_neighbour()
    {
        var fault = FaultText.Read("moved: box.X4 to lamp.+ end box.X4 to box.X5", Sample).Fault!;
        var rig = new Rig(Patch.Apply(Sample, fault), new RigOptions { Healthy = Sample });
        rig.Do(Set("lock", "riding"));

        var own = rig.Do(Set("first button", "pressed"));
        Assert.Equal(Symbol.Lit, own.Light("Z1"));
        Assert.Equal(Symbol.Lit, own.Light("X4"));
        Assert.Equal(Symbol.Dark, own.Symbol("lamp"));

        rig.Do(Set("first button", "released"));
        Assert.Equal(Symbol.Lit, rig.Do(Set("second button", "pressed")).Symbol("lamp"));
    }

    [Fact]
    public void A_dead_box_shows_no_light_and_switches_nothing_whatever_is_pressed()
    {
        var rig = new Rig(Patch.Apply(Sample, new Fault.Dead("box")), new RigOptions { Healthy = Sample });
        rig.Do(Set("lock", "riding"));
        var frame = rig.Do(Set("first button", "pressed"));

        Assert.All(frame.Controllers.Single().Lights, l => Assert.Equal(Symbol.Dark, l.Symbol));
        Assert.Equal(Symbol.Dark, frame.Symbol("lamp"));
        Assert.Equal(Symbol.Sounds, frame.Symbol("horn"));
    }

    [Fact]
    public void A_burnt_lamp_stays_dark_though_all_the_volts_stand_across_it()
    {
        var rig = new Rig(Patch.Apply(Sample, new Fault.Dead("lamp")), new RigOptions { Healthy = Sample });
        rig.Do(Set("lock", "riding"));
        var lamp = rig.Do(Set("first button", "pressed")).Seen.Single(s => s.Name == "lamp");

        Assert.Equal(Symbol.Dark, lamp.Symbol);
        Assert.Equal(0, lamp.LightShare);
        Assert.True(lamp.Voltage.Volts > 12);
    }

    [Fact]
    public void With_both_filaments_burnt_neither_lights()
    {
        var loom = Examples.Read("examples/sandpiper/sandpiper.loom.yaml");
        (string Stop, Symbol Seen)[] tries = [("dead: horn", Symbol.Lit), ("dead: rear lamp.stop", Symbol.Dark)];
        Assert.All(tries, t =>
        {
            string[] ids = [t.Stop, "dead: rear lamp.tail"];
            var rig = new Rig(ids.Select(id => FaultText.Read(id, loom).Fault!).Aggregate(loom, Patch.Apply), new RigOptions { Healthy = loom });
            var frame = rig.Play([Set("lock", "riding"), Set("light switch", "position"), Set("front brake", "pulled")])[^1];
            Assert.Equal(Symbol.Dark, frame.Symbol("rear lamp.tail"));
            Assert.Equal(t.Seen, frame.Symbol("rear lamp.stop"));
        });
    }

    private static void Same(Wiring one, Picture a, Wiring other, Picture b)
    {
        foreach (var point in one.Points)
        {
            Assert.Equal(a.Volts[point.Node], b.Volts[other.NodeOf(point.Terminal)!.Value], 1e-9);
        }

        for (var l = 0; l < one.Links.Length; l++)
        {
            var link = one.Links[l];
            var same = Enumerable.Range(0, other.Links.Length).Single(o => (other.Links[o].Owner, other.Links[o].Name, other.Links[o].IsWire) == (link.Owner, link.Name, link.IsWire));
            Assert.Equal(a.Amps[l], b.Amps[same], 1e-8);
        }
    }

    private static Settled End(Wiring wiring, ImmutableArray<int> moved)
    {
        var settler = new Settler(wiring);
        return moved.Aggregate(settler.Settle(wiring.Start()), (before, control) => settler.Settle(Time.Moved(before.State, control, 1)));
    }
}
