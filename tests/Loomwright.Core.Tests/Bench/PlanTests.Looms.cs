using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Tests.Bench;

// What the plan makes of looms that are not as they should be, or not the usual.
public partial class PlanTests
{
    [Fact]
    public void A_lock_in_hand_is_measured_from_feed_to_ground_in_every_position_before_any_power()
    {
        var plan = Plan.For(Examples.Gallery("no-way-back"));
        var texts = plan.Stages[0].Steps.TakeWhile(s => s.Act != Act.PowerUp).Where(s => s.Act == Act.Measure).Select(s => s.Text).ToList();
        Assert.All(["riding", "park", "off"], p => Assert.Contains(texts, t => t.StartsWith($"Set lock to {p}. From lock r", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_position_that_shorts_the_supply_is_put_right_before_any_stage()
    {
        var plan = Plan.For(Examples.Gallery("lock-joins-feed-and-ground"));
        Assert.Contains(plan.PutRightFirst, f => f.Code == "position-joins-feed-and-ground");
        Assert.Empty(plan.Stages);
        Assert.Contains(plan.OpenPoints, p => p.StartsWith("Nothing is powered before", StringComparison.Ordinal));
    }

    [Fact]
    public void A_feed_without_any_fuse_is_put_right_before_any_stage() => Assert.Empty(Plan.For(Examples.Gallery("unfused-feed")).Stages);

    [Fact]
    public void A_bench_supply_on_a_loom_without_a_fuse_gets_one_on_the_bench()
    {
        var plan = Plan.For(BenchFed);
        Assert.Contains(plan.Stages[0].Steps, s => s.Part == "bench fuse");
        Assert.Null(plan.Stages[0].FirstFuse.Final);
        Assert.All(plan.Stages, s => Assert.Single(s.Connected.Wires, w => w.From.ToString() == "supply.+" || w.To.ToString() == "supply.+"));
    }

    [Fact]
    public void A_wire_for_a_part_that_a_lead_stands_in_for_keeps_that_end_free()
    {
        var step = Assert.Single(Kittiwake.Stages.SelectMany(s => s.Steps), s => s is { Act: Act.Connect, Wire: "front brake signal" });
        Assert.EndsWith("to box Z1 (stop). Its end for front brake 1 stays free for the lead.", step.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lamp_that_stands_in_for_another_is_the_one_simulated()
    {
        var standIn = Examples.Kittiwake with { StandIns = [new StandIn("a 5 W lamp", "left rear indicator")] };
        var draws = Plan.For(standIn).Stages[^1].Draws.Amps;
        Assert.True(draws < Kittiwake.Stages[^1].Draws.Amps / 2);
    }

    [Fact]
    public void A_part_that_is_not_on_the_table_costs_its_own_stage_and_the_plan_says_so()
    {
        var table = Examples.Kittiwake.Parts.Select(p => p.Name).Where(n => n != "left rear indicator");
        var plan = Plan.For(Examples.Kittiwake, new PlanOptions { OnTable = [.. table] });
        Assert.Equal(Kittiwake.Stages.Length - 1, plan.Stages.Length);
        Assert.Contains("left indicator: left rear indicator is not on the table.", plan.OpenPoints);
    }

    [Fact]
    public void A_bench_supply_too_small_to_start_a_lamp_cold_is_named_with_its_stage()
    {
        var head = Examples.Of(Relays.Head + """
              head lamp:
                kind: lamp
                filament: 55 W
              box:
                kind: load controller
                plugs:
                  X: [B+, B-, X1, X2]
                supply: B+
                ground: B-
                awake: key
                inputs:
                  key: {terminal: X1, active: plus}
                outputs:
                  dip: {terminal: X2, when: key}
            wires:
              - {from: battery.+, to: main fuse.1, size: 1 mm2, length: 0.1 m}
              - {from: main fuse.2, to: box.B+, size: 1 mm2, length: 0.5 m}
              - {from: main fuse.2, to: lock.r, size: 1 mm2, length: 0.5 m}
              - {from: lock.s, to: box.X1, size: 1 mm2, length: 0.5 m}
              - {from: box.B-, to: battery.-, size: 1 mm2, length: 0.5 m}
              - {from: box.X2, to: head lamp.+, size: 1 mm2, length: 0.5 m}
              - {from: head lamp.-, to: battery.-, size: 1 mm2, length: 0.5 m}
            """);
        Assert.DoesNotContain(Plan.For(head).OpenPoints, p => p.Contains("supply", StringComparison.Ordinal));
        Assert.Contains(Plan.For(head, new PlanOptions { BenchSupplyLimit = new Current(5) }).OpenPoints, p => p.Contains("head lamp", StringComparison.Ordinal));
    }

    [Fact]
    public void A_function_with_two_kinds_of_lamp_shows_one_kind_first_and_the_next_such_function_shows_both_at_once()
    {
        var two = Examples.Of(Relays.Head + """
              left button: {kind: button}
              right button: {kind: button}
              left front: {kind: lamp, filament: 21 W}
              left rear: {kind: lamp, led: 2 W}
              right front: {kind: lamp, filament: 21 W}
              right rear: {kind: lamp, led: 2 W}
              box:
                kind: load controller
                plugs:
                  X: [B+, B-, X1, X2, X3, X4, X5]
                supply: B+
                ground: B-
                awake: key
                inputs:
                  key: {terminal: X1, active: plus}
                  left: {terminal: X2, active: ground}
                  right: {terminal: X3, active: ground}
                outputs:
                  left lamps: {terminal: X4, when: left}
                  right lamps: {terminal: X5, when: right}
            wires:
              - {from: battery.+, to: main fuse.1, size: 1 mm2, length: 0.1 m}
              - {from: main fuse.2, to: box.B+, size: 1 mm2, length: 0.5 m}
              - {from: main fuse.2, to: lock.r, size: 1 mm2, length: 0.5 m}
              - {from: lock.s, to: box.X1, size: 1 mm2, length: 0.5 m}
              - {from: box.B-, to: battery.-, size: 1 mm2, length: 0.5 m}
              - {from: left button.1, to: box.X2, size: 1 mm2, length: 0.5 m}
              - {from: left button.2, to: battery.-, size: 1 mm2, length: 0.5 m}
              - {from: right button.1, to: box.X3, size: 1 mm2, length: 0.5 m}
              - {from: right button.2, to: battery.-, size: 1 mm2, length: 0.5 m}
              - {from: box.X4, to: left front.+, size: 1 mm2, length: 0.5 m}
              - {from: left front.-, to: battery.-, size: 1 mm2, length: 0.5 m}
              - {from: box.X4, to: left rear.+, size: 1 mm2, length: 0.5 m}
              - {from: left rear.-, to: battery.-, size: 1 mm2, length: 0.5 m}
              - {from: box.X5, to: right front.+, size: 1 mm2, length: 0.5 m}
              - {from: right front.-, to: battery.-, size: 1 mm2, length: 0.5 m}
              - {from: box.X5, to: right rear.+, size: 1 mm2, length: 0.5 m}
              - {from: right rear.-, to: battery.-, size: 1 mm2, length: 0.5 m}
            """);
        Assert.Equal(["box alone", "left lamps", "left lamps, left rear too", "right lamps"], Plan.For(two).Stages.Select(s => s.Title));
    }

    [Fact]
    public void A_box_that_never_wakes_leaves_no_stage_and_the_plan_names_the_missing_lead()
    {
        var plan = Plan.For(Examples.Gallery("key-feed-left-out"));
        Assert.Empty(plan.Stages);
        Assert.Contains(plan.OpenPoints, p => p.Contains("box X1 (key)", StringComparison.Ordinal));
    }

    [Fact]
    public void A_second_box_comes_alone_before_its_first_load()
    {
        var loom = Examples.Kittiwake;
        Wire Onto(string wire, string name, TerminalRef from, TerminalRef to) => loom.Wire(wire)! with { Name = name, From = from, To = to };
        TerminalRef At(string mark) => new("second box", mark);
        var two = loom with
        {
            Parts = [.. loom.Parts, loom.Part("box")! with { Name = "second box" }, loom.Part("left rear indicator")! with { Name = "work lamp" }],
            Wires =
            [
                .. loom.Wires,
                Onto("box supply", "second supply", new("main fuse", "2"), At("B+")),
                Onto("box ground", "second ground", At("B-"), new("ground bar", "")),
                Onto("key feed", "second key feed", new("lock", "s"), At("X1")),
                Onto("tail lamp feed", "work lamp feed", At("X7"), new("work lamp", "feed")),
                Onto("left rear indicator ground", "work lamp ground", new("work lamp", "ground"), new("tail stud", "")),
            ],
        };
        var titles = Plan.For(two).Stages.Select(s => s.Title).ToList();
        Assert.Equal("box alone", titles[0]);
        Assert.True(titles.IndexOf("second box alone") > 0);
        Assert.Equal(titles.Count - 1, titles.LastIndexOf("tail lamp"));
    }

    [Fact]
    public void On_a_positive_ground_machine_the_red_clip_still_goes_on_plus_first()
    {
        var lamp = Plan.For(Examples.Of("""
            loomwright: 1
            name: Sandpiper
            ground: positive
            parts:
              battery:
                kind: battery
                chemistry: lead-acid
              main fuse:
                kind: fuse
                rating: 10 A
              lock:
                kind: switch
                terminals: [r, s]
                positions:
                  "off": []
                  riding: [[r, s]]
              tail lamp:
                kind: lamp
                filament: 5 W
            wires:
              - {from: battery.-, to: main fuse.1, size: 1 mm2, length: 0.1 m}
              - {from: main fuse.2, to: lock.r, size: 1 mm2, length: 0.5 m}
              - {from: lock.s, to: tail lamp.-, size: 1 mm2, length: 0.5 m}
              - {from: tail lamp.+, to: battery.+, size: 1 mm2, length: 0.5 m}
            """));
        Assert.Equal(2, lamp.Stages.Length);
        Assert.All(lamp.Stages, s => Assert.Equal("battery.+", s.Steps.First(x => x.Act == Act.PowerUp).Marks[0].Terminal.ToString()));
        Assert.Contains(new Expectation("tail lamp", "lit"), lamp.Stages[1].Steps.SelectMany(s => s.Expect));
    }

    [Fact]
    public void Without_a_supply_there_is_no_stage_and_the_plan_says_why()
    {
        var loom = Examples.Kittiwake;
        var plan = Plan.For(loom with { Parts = loom.Parts.Remove(loom.Part("battery")!), Wires = loom.Wires.RemoveAll(w => w.From.Part == "battery" || w.To.Part == "battery") });
        Assert.Empty(plan.Stages);
        Assert.Contains(plan.OpenPoints, p => p.Contains("no bench supply", StringComparison.Ordinal));
    }

    [Fact]
    public void Step_ids_are_counted_inside_their_act_and_unique()
    {
        var ids = Kittiwake.Stages.SelectMany(s => s.Steps).Select(s => s.Id).ToList();
        Assert.Equal(ids.Count, ids.Distinct(StringComparer.Ordinal).Count());
        Assert.Contains("s1.connect.2", ids);
    }

    [Fact]
    public void Any_wire_left_out_still_gives_a_plan_or_says_what_is_missing() => Assert.All(Examples.Kittiwake.Wires, w =>
    {
        var plan = Plan.For(Examples.Kittiwake.Without(w.Name));
        Assert.NotEmpty(plan.OpenPoints);
        Assert.All(plan.Stages, s => Assert.DoesNotContain(s.Connected.Wires, c => c.Name == w.Name));
    });
}
