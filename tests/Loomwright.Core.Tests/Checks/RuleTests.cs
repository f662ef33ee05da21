using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Tests.Checks;

public class RuleTests
{
    [Fact]
    public void The_bench_set_up_as_drawn_is_clear() => Assert.Empty(Rules.Check(Examples.Kittiwake));

    [Theory]
    [InlineData("kittiwake")]
    [InlineData("kittiwake-bench")]
    [InlineData("sandpiper")]
    [InlineData("turnstone")]
    [InlineData("cold-start")]
    public void No_whole_example_has_anything_above_a_note(string name) =>
        Assert.DoesNotContain(Rules.Check(Examples.Read($"examples/{name}/{name}.loom.yaml")), f => f.Severity > Severity.Note);

    [Theory]
    [InlineData("battery plus")]
    [InlineData("box supply")]
    [InlineData("box ground")]
    [InlineData("battery minus")]
    [InlineData("key fuse link")]
    [InlineData("lock feed")]
    [InlineData("key feed")]
    public void A_box_with_any_lead_of_its_supply_or_its_key_left_out_never_wakes(string wire) =>
        Assert.Contains(Rules.Check(Examples.Kittiwake.Without(wire)), f => f.Code == "box-never-wakes");

    [Theory]
    [InlineData("tail lamp feed")]
    [InlineData("front brake signal")]
    [InlineData("steering ground")]
    public void A_box_wakes_without_what_only_its_loads_and_buttons_need(string wire) =>
        Assert.DoesNotContain(Rules.Check(Examples.Kittiwake.Without(wire)), f => f.Code == "box-never-wakes");

    [Fact]
    public void A_missing_key_feed_is_named_by_its_terminal()
    {
        var found = Assert.Single(Rules.Check(Examples.Kittiwake.Without("key feed")), f => f.Code == "box-never-wakes");
        Assert.Equal(new Subject.OfTerminal(new TerminalRef("box", "X1")), found.Where);
        Assert.Contains("box X1 (key)", found.What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_ground_bar_without_its_own_lead_takes_the_way_back_from_everything_on_it_at_once()
    {
        var found = Assert.Single(Rules.Check(Examples.Kittiwake.Without("battery minus")), f => f.Code == "no-way-back");
        Assert.Equal(new Subject.OfPart("ground bar"), found.Where);
        Assert.All(["box", "rear cluster tail", "rear cluster stop", "left rear indicator"], load => Assert.Contains(load, found.What, StringComparison.Ordinal));
    }

    [Fact]
    public void A_tail_stud_without_its_own_lead_takes_the_way_back_from_its_lamps_alone()
    {
        var found = Assert.Single(Rules.Check(Examples.Kittiwake.Without("tail ground")), f => f.Severity > Severity.Note);
        Assert.Equal(new Subject.OfPart("tail stud"), found.Where);
        Assert.DoesNotContain("box", found.What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_handlebar_ground_without_its_own_lead_takes_the_way_back_from_every_button_on_it()
    {
        var found = Assert.Single(Rules.Check(Examples.Kittiwake.Without("steering ground")), f => f.Severity > Severity.Note);
        Assert.Equal(new Subject.OfPart("bar ground"), found.Where);
        Assert.Contains("box Z1 (stop), box Z2 (left)", found.What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lock_that_joins_feed_to_ground_one_click_later_works_in_the_first_position_and_is_stopped_for_the_second()
    {
        var loom = Examples.Gallery("lock-joins-feed-and-ground");
        var found = Assert.Single(Rules.Check(loom), f => f.Severity > Severity.Note);
        Assert.Equal(("position-joins-feed-and-ground", Severity.Stop), (found.Code, found.Severity));
        Assert.Contains("At park lock joins feed to ground", found.What, StringComparison.Ordinal);
        Assert.Contains("riding it does not", found.What, StringComparison.Ordinal);
        var rig = new Rig(loom);
        Assert.True(rig.Do(new Operation.Set("lock", "riding")).Controllers[0].Awake);
        Assert.Contains(rig.Do(new Operation.Set("lock", "park")).Fuses, f => f.State == FuseState.Blown);
    }

    [Fact]
    public void A_button_that_closes_a_short_which_a_lock_has_prepared_is_stopped_with_both_named()
    {
        var found = Rules.Check(Examples.Of(Relays.Head + """
              button:
                kind: button
            wires:
              - {from: battery.+, to: main fuse.1, size: 1 mm2, length: 0.1 m}
              - {from: main fuse.2, to: lock.r, size: 1 mm2, length: 0.3 m}
              - {from: lock.s, to: button.1, size: 1 mm2, length: 0.3 m}
              - {from: button.2, to: battery.-, size: 1 mm2, length: 0.3 m}
            """));
        Assert.Equal(["lock", "button"], found.Where(f => f.Severity == Severity.Stop).Select(f => ((Subject.OfPart)f.Where).Part));
        Assert.Contains("with lock at riding", found[1].What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lamp_between_feed_and_ground_is_a_load_and_no_short() =>
        Assert.DoesNotContain(Rules.Check(Relays.Lamp), f => f.Code == "position-joins-feed-and-ground");

    [Theory]
    [InlineData("suppressor.cathode", "suppressor.anode", false)]
    [InlineData("suppressor.anode", "suppressor.cathode", true)]
    public void A_diode_across_a_horn_points_from_ground_to_feed_and_the_other_way_round_shorts_it(string onFeed, string onGround, bool stops)
    {
        var found = Rules.Check(Examples.Of(Relays.Head + $$"""
              horn:
                kind: horn
              suppressor:
                kind: diode
            wires:
              - {from: battery.+, to: main fuse.1, size: 1 mm2, length: 0.1 m}
              - {from: main fuse.2, to: horn.1, size: 1 mm2, length: 0.3 m}
              - {from: horn.2, to: battery.-, size: 1 mm2, length: 0.3 m}
              - {from: main fuse.2, to: {{onFeed}}, size: 1 mm2, length: 0.3 m}
              - {from: {{onGround}}, to: battery.-, size: 1 mm2, length: 0.3 m}
            """));
        Assert.Equal(stops, found.Any(f => f is { Code: "polarised-part-reversed", Severity: Severity.Stop }));
    }

    [Theory]
    [InlineData("86", "85", false)]
    [InlineData("85", "86", true)]
    public void A_coil_with_a_diode_wants_its_feed_at_86(string onFeed, string onGround, bool stops)
    {
        var found = Rules.Check(Examples.Of(Relays.Head + $$"""
              horn relay:
                kind: relay
                across coil: diode
            wires:
              - {from: battery.+, to: main fuse.1, size: 1 mm2, length: 0.1 m}
              - {from: main fuse.2, to: horn relay.{{onFeed}}, size: 1 mm2, length: 0.3 m}
              - {from: horn relay.{{onGround}}, to: battery.-, size: 1 mm2, length: 0.3 m}
            """));
        Assert.Equal(stops, found.Any(f => f is { Code: "polarised-part-reversed", Severity: Severity.Stop }));
    }

    [Fact]
    public void The_cable_of_a_starter_without_a_fuse_is_a_note()
    {
        var found = Rules.Check(Examples.Of(Relays.Head + """
              starter relay:
                kind: starter relay
            wires:
              - {from: battery.+, to: starter relay.30, size: 16 mm2, length: 0.2 m}
            """));
        Assert.Equal(Severity.Note, Assert.Single(found, f => f.Code == "unfused-feed").Severity);
    }

    [Fact]
    public void A_diode_in_line_against_the_current_is_reversed_and_with_it_is_not()
    {
        Loom InLine(string first, string second) => Examples.Of(Relays.Head + $$"""
              tail lamp:
                kind: lamp
                filament: 5 W
              blocker:
                kind: diode
            wires:
              - {from: battery.+, to: main fuse.1, size: 1 mm2, length: 0.1 m}
              - {from: main fuse.2, to: blocker.{{first}}, size: 1 mm2, length: 0.3 m}
              - {from: blocker.{{second}}, to: tail lamp.+, size: 1 mm2, length: 0.3 m}
              - {from: tail lamp.-, to: battery.-, size: 1 mm2, length: 0.3 m}
            """);
        Assert.Contains(Rules.Check(InLine("cathode", "anode")), f => f.Code == "polarised-part-reversed");
        Assert.Equal(Symbol.Dark, new Rig(InLine("cathode", "anode")).Now.Seen[0].Symbol);
        Assert.DoesNotContain(Rules.Check(InLine("anode", "cathode")), f => f.Code == "polarised-part-reversed");
    }

    [Theory]
    [InlineData(0.1, false)]
    [InlineData(0.9, true)]
    public void A_fuse_further_from_battery_plus_than_a_hand_is_a_note_and_never_more(double metres, bool noted)
    {
        var loom = Examples.Kittiwake;
        var wire = loom.Wire("battery plus")!;
        var found = Rules.Check(loom with { Wires = loom.Wires.Replace(wire, wire with { Length = new Length(metres) }) });
        Assert.Equal(noted, found.Any(f => f.Code == "unfused-feed"));
        Assert.All(found, f => Assert.Equal(Severity.Note, f.Severity));
    }

    [Fact]
    public void No_design_of_the_gallery_with_a_wire_left_out_makes_a_rule_throw() =>
        Assert.All(Examples.Kittiwake.Wires, w => Rules.Check(Examples.Kittiwake.Without(w.Name)));
}
