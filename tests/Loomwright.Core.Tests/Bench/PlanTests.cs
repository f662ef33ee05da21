using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Sizing;
using Loomwright.Text;

namespace Loomwright.Tests.Bench;

public partial class PlanTests
{
    private static readonly Plan Kittiwake = Plans.OnTheBench(Examples.Kittiwake);

    public static TheoryData<string> Looms => ["kittiwake", "kittiwake on a bench supply", "relays", "relays on a bench supply"];

    [Fact]
    public void The_plan_of_the_bench_set_up_is_the_accepted_one() => Golden.Check("plan/kittiwake-bench.txt", PlanText.Of(Kittiwake));

    [Fact]
    public void The_plan_of_a_loom_without_a_box_is_the_accepted_one() => Golden.Check("plan/relays.txt", PlanText.Of(Plan.For(Relays.Lamp)));

    [Fact]
    public void Two_runs_give_the_same_plan() => Assert.Equal(PlanText.Of(Kittiwake), PlanText.Of(Plan.For(Examples.Kittiwake)));

    [Fact]
    public void A_fuse_is_counted_as_needed_only_where_it_is_and_that_of_a_lead_that_may_be_used_is_told_apart()
    {
        Assert.Equal(["1 A fuse (1 more if you use a key lead)"], Effort.Tools(Plan.For(Relays.Lamp).Stages[0]).Where(t => t.Contains("fuse", StringComparison.Ordinal)));
        Assert.Equal(["3 A fuse", "2 × 1 A fuse"], Effort.Tools(Kittiwake.Stages[0]).Where(t => t.Contains("fuse", StringComparison.Ordinal)));
    }

    [Fact]
    public void It_goes_from_the_box_alone_over_a_steady_lamp_to_what_flashes() =>
        Assert.Equal(["box alone", "tail lamp", "stop lamp", "left indicator"], Kittiwake.Stages.Select(s => s.Title));

    [Fact]
    public void A_loom_without_a_box_goes_from_the_feed_alone_to_its_loads() =>
        Assert.Equal(["the feed alone, no load", "tail lamp", "horn"], Plan.For(Relays.Lamp).Stages.Select(s => s.Title));

    [Theory]
    [MemberData(nameof(Looms))]
    public void The_first_stage_holds_no_load(string loom) => Assert.Empty(new Rig(PlanOf(loom).Stages[0].Connected).Now.Seen);

    [Theory]
    [MemberData(nameof(Looms))]
    public void Nothing_is_connected_that_no_step_before_has_fetched(string loom)
    {
        var parts = new HashSet<string>(Names.Comparer);
        var wires = new HashSet<string>(Names.Comparer);
        foreach (var step in PlanOf(loom).Stages.SelectMany(s => s.Steps))
        {
            if (step.Act == Act.Fetch)
            {
                parts.UnionWith(step.Part is { } part ? [part] : []);
                wires.UnionWith(step.Wire is { } wire ? [wire] : []);
            }
            else
            {
                Assert.All(step.Marks, m => Assert.Contains(m.Terminal.Part, parts));
                Assert.True(step.Wire is null || wires.Contains(step.Wire), step.Text);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Looms))]
    public void Every_part_and_wire_of_a_stage_was_fetched_and_every_wire_was_connected(string loom)
    {
        var plan = PlanOf(loom);
        var fetched = new HashSet<string>(Names.Comparer);
        var connected = new HashSet<string>(Names.Comparer);
        foreach (var stage in plan.Stages)
        {
            fetched.UnionWith(stage.Steps.Where(s => s.Act == Act.Fetch).SelectMany(s => new[] { s.Part, s.Wire }).OfType<string>());
            connected.UnionWith(stage.Steps.Where(s => s.Act == Act.Connect).Select(s => s.Wire).OfType<string>());
            Assert.All(stage.Connected.Parts, p => Assert.Contains(p.Name, fetched));
            Assert.True(connected.SetEquals(stage.Connected.Wires.Select(w => w.Name)));
        }
    }

    [Theory]
    [MemberData(nameof(Looms))]
    public void Every_powered_step_expects_what_a_simulation_of_exactly_what_is_connected_shows(string loom)
    {
        foreach (var stage in PlanOf(loom).Stages)
        {
            var rig = new Rig(stage.Connected);
            foreach (var step in stage.Steps.Where(s => s.PowerOn))
            {
                var frame = step.Do is { } operation ? rig.Do(operation) : step.Wait is { } time ? rig.Do(new Operation.Wait(time)) : rig.Now;
                Assert.True(!step.Expect.IsEmpty || step.Act == Act.PowerDown || stage.Number == 0, step.Text);
                Assert.All(step.Expect, e => AssertSeen(e, step, rig, frame));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Looms))]
    public void Every_measurement_before_power_expects_the_ohms_of_exactly_what_is_connected(string loom)
    {
        foreach (var stage in PlanOf(loom).Stages)
        {
            var whole = new Rig(stage.Connected);
            var unplugged = stage.Steps.Select(s => s.Unplugged).FirstOrDefault(u => !u.IsEmpty, []);
            var bare = new Rig(Unplugged.Of(stage.Connected, new Loomwright.Checks.Paths(stage.Connected), unplugged));
            foreach (var step in stage.Steps.Where(s => s.Act == Act.Measure))
            {
                var rig = step.Unplugged.IsEmpty ? whole : bare;
                if (step.Do is { } operation)
                {
                    whole.Do(operation);
                    bare.Do(operation);
                }

                var band = Assert.Single(step.Expect).Band!;
                var ohms = rig.Ohms(step.Meter!.RedTip.Terminal, step.Meter.BlackTip.Terminal)?.Ohms;
                Assert.Equal(band.Computed, ohms);
                Assert.True(IsInside(band, ohms ?? double.PositiveInfinity));
                Assert.False(step.PowerOn);
            }

            Assert.All(whole.Now.Controls, c => Assert.True(c.AtRest));
        }
    }

    [Fact]
    public void A_lamp_behind_a_closed_switch_reads_as_a_cold_lamp_and_as_nothing_while_it_is_unplugged()
    {
        var steps = Plan.For(Relays.Lamp).Stages[1].Steps.Where(s => s.Do is { Control: "light switch", Position: "lit" } && s.Act == Act.Measure).ToList();
        Assert.Equal([false, true], steps.Select(s => s.Unplugged.IsEmpty));
        Assert.StartsWith("no reading", steps[0].Expect[0].Shows, StringComparison.Ordinal);
        Assert.StartsWith("reads tail lamp: about 2.", steps[1].Expect[0].Shows, StringComparison.Ordinal);
        Assert.False(IsInside(steps[1].Expect[0].Band!, 0.1));
    }

    [Fact]
    public void A_lead_left_out_shows_in_the_ohms_before_power()
    {
        foreach (var stage in Kittiwake.Stages.Skip(1))
        {
            var ground = stage.Steps.Last(s => s.Act == Act.Measure && s.Text.Contains("way back alone", StringComparison.Ordinal));
            var lost = new Rig(stage.Connected.Without("tail ground"));
            Assert.False(IsInside(ground.Expect[0].Band!, lost.Ohms(ground.Meter!.RedTip.Terminal, ground.Meter.BlackTip.Terminal)?.Ohms ?? double.PositiveInfinity));
        }
    }

    [Theory]
    [MemberData(nameof(Looms))]
    public void Every_stage_ends_with_all_controls_at_rest_and_the_supply_off_by_key_then_minus_then_plus(string loom)
    {
        foreach (var stage in PlanOf(loom).Stages)
        {
            var rig = new Rig(stage.Connected);
            foreach (var operation in stage.Steps.Select(s => s.Do).OfType<Operation.Set>())
            {
                rig.Do(operation);
            }

            Assert.All(rig.Now.Controls, c => Assert.True(c.AtRest, $"{c.Control} stays at {c.Position}"));
            var up = stage.Steps.Where(s => s.Act == Act.PowerUp).ToList();
            var down = stage.Steps.Where(s => s.Act == Act.PowerDown).ToList();
            Assert.Equal(stage.Number == 0 && !loom.StartsWith("kitti", StringComparison.Ordinal) ? ["+"] : ["+", "-"], Clipped(up));
            Assert.Equal(stage.Number == 0 && !loom.StartsWith("kitti", StringComparison.Ordinal) ? ["+"] : ["-", "+"], Clipped(down));
            Assert.All(up.SkipWhile(s => s.Do is null), s => Assert.NotNull(s.Do));
            Assert.All(down.SkipWhile(s => s.Do is not null), s => Assert.Null(s.Do));
        }
    }

    [Theory]
    [MemberData(nameof(Looms))]
    public void Power_stays_on_until_the_step_that_takes_it_off_is_done(string loom) => Assert.All(PlanOf(loom).Stages, stage =>
    {
        var last = stage.Steps.Last(s => s.PowerOn);
        Assert.True(last.Text is "Output off." || last.Text.Contains(" comes off ", StringComparison.Ordinal), last.Text);
        Assert.Single(stage.Steps, s => s.PowerOn && s.Act == Act.PowerDown && s.Do is null);
    });

    [Fact]
    public void A_bench_supply_is_set_first_and_its_output_goes_off_before_any_clip()
    {
        var plan = PlanOf("kittiwake on a bench supply");
        var first = plan.Stages[0].Steps.First(s => s.Act == Act.PowerUp);
        Assert.Contains("set 13.00 V, limit 5.00 A", first.Text, StringComparison.Ordinal);
        Assert.InRange(first.Expect[0].Band!.Computed!.Value, 12.95, 13.05);
        Assert.All(plan.Stages, s => Assert.Equal("Output off.", s.Steps.First(x => x.Act == Act.PowerDown && x.Do is null).Text));
        Assert.DoesNotContain(Cautions.Hot, plan.Stages.SelectMany(s => s.Steps).SelectMany(s => s.Cautions));
        Assert.DoesNotContain(Cautions.AmpsSocket, plan.Stages.SelectMany(s => s.Steps).SelectMany(s => s.Cautions));
    }

    [Fact]
    public void The_meter_stands_behind_the_small_fuse_and_comes_out_as_its_own_step()
    {
        var steps = Kittiwake.Stages[0].Steps;
        var amps = Assert.Single(steps, s => s.Meter is { Dial: Dial.Amps });
        Assert.Equal("main fuse.2", amps.Marks[0].Terminal.ToString());
        Assert.StartsWith("Meter out", steps[^1].Text, StringComparison.Ordinal);
        Assert.Contains(steps, s => s.Expect.Any(e => e.Shows == "0.00 or 0.01 A"));
    }

    [Fact]
    public void What_ends_by_itself_is_waited_for_and_its_end_named_where_it_is_pressed()
    {
        var steps = Kittiwake.Stages[^1].Steps;
        Assert.Contains(steps, s => s.Text.Contains("Within 45 s; later it has ended by itself.", StringComparison.Ordinal));
        var wait = Assert.Single(steps, s => s.Wait is not null);
        Assert.Equal(45, wait.Wait!.Value.TotalSeconds, 3);
        Assert.Contains(new Expectation("left rear indicator", "dark"), wait.Expect);
    }

    [Fact]
    public void A_load_of_amps_is_read_at_its_leads_and_on_both_ways()
    {
        var read = Kittiwake.Stages[^1].Steps.Where(s => s.Act == Act.Operate && s.Meter is not null).ToList();
        Assert.Equal(3, read.Count);
        Assert.Equal(["highest volts at left rear indicator", "highest volts lost", "highest volts lost"], read.Select(s => s.Expect[^1].What));
        Assert.All(read.Skip(1), s => Assert.Equal(-s.Expect[^1].Band!.Most, s.Expect[^1].Band!.Least));
    }

    [Fact]
    public void What_stays_on_is_read_with_the_button_let_go()
    {
        var steps = Kittiwake.Stages[^1].Steps.Where(s => s.Act == Act.Operate).ToList();
        Assert.Equal("released", steps[steps.FindIndex(s => s.Meter is not null) - 1].Do!.Position);
    }

    [Fact]
    public void Minus_is_not_clipped_on_while_nothing_is_connected_to_it() =>
        Assert.DoesNotContain(Plan.For(Relays.Lamp).Stages[0].Steps, s => s.Text.StartsWith("Black clip", StringComparison.Ordinal) || s.Cautions.Contains(Cautions.Hot));

    [Theory]
    [MemberData(nameof(Looms))]
    public void No_reading_is_expected_above_what_the_stage_is_said_to_draw(string loom) => Assert.All(PlanOf(loom).Stages, stage =>
        Assert.All(stage.Steps.SelectMany(s => s.Expect).Select(e => e.Band).Where(b => b is { Unit: Unit.Amp }), b => Assert.True(b!.Most <= stage.DrawsAtMost.Amps + 1e-9)));

    [Fact]
    public void Every_fuse_that_stays_is_fetched_with_its_holder_and_put_in()
    {
        Assert.Contains(Kittiwake.Stages[0].Steps, s => s is { Act: Act.Fetch, Part: "key fuse" } && s.Text.EndsWith("its holder and a 3 A fuse (violet).", StringComparison.Ordinal));
        Assert.Contains(Kittiwake.Stages[0].Steps, s => s.Act == Act.Connect && s.Text == "Put the 3 A fuse (violet) into key fuse.");
    }

    [Theory]
    [InlineData("kind: fuse", true)]
    [InlineData("kind: breaker", false)]
    public void A_second_fuse_at_the_battery_is_put_in_at_its_own_stage_and_a_breaker_stays_as_it_is(string kind, bool isFuse)
    {
        var plan = Plan.For(Examples.Of(Relays.Head + $$"""
              tail lamp: {kind: lamp, filament: 5 W}
              second: { {{kind}}, rating: 10 A }
              button: {kind: button}
              horn: {kind: horn}
            wires:
              - {from: battery.+, to: main fuse.1, size: 1 mm2, length: 0.1 m}
              - {from: main fuse.2, to: lock.r, size: 1 mm2, length: 0.5 m}
              - {from: lock.s, to: tail lamp.+, size: 1 mm2, length: 0.5 m}
              - {from: tail lamp.-, to: battery.-, size: 1 mm2, length: 0.5 m}
              - {from: battery.+, to: second.1, size: 1 mm2, length: 0.1 m}
              - {from: second.2, to: horn.1, size: 1 mm2, length: 0.5 m}
              - {from: horn.2, to: button.1, size: 1 mm2, length: 0.5 m}
              - {from: button.2, to: battery.-, size: 1 mm2, length: 0.5 m}
            """));
        Assert.Equal(isFuse, plan.Stages[^1].Steps.Any(s => s.Act == Act.Connect && s.Text.EndsWith("into second.", StringComparison.Ordinal)));
        Assert.Contains(plan.Stages[^1].Steps, s => s.Expect.Contains(new Expectation("horn", "sounds")));
    }

    [Theory]
    [InlineData("kittiwake")]
    [InlineData("sandpiper")]
    [InlineData("turnstone")]
    public void Every_whole_bike_gets_stages(string bike) => Assert.True(Plans.OnTheBench(Plans.Bike(bike)).Stages.Length > 1);

    [Fact]
    public void The_lead_for_the_key_has_a_fuse_of_a_stated_rating() =>
        Assert.Contains(Kittiwake.Stages[0].Steps, s => s is { Act: Act.Fetch, Part: "lock" } && s.Text.Contains("a 1 A fuse (black) and a bench switch", StringComparison.Ordinal));

    [Fact]
    public void A_bench_supply_at_its_limit_is_said_to_be_too_small()
    {
        var plan = Plan.For(BenchFed, new PlanOptions { BenchSupplyLimit = new Current(1) });
        Assert.StartsWith("Do not power this stage from this supply: 1.00 A is too small.", plan.Stages[^1].Why, StringComparison.Ordinal);
        Assert.DoesNotContain("too small", plan.Stages[0].Why, StringComparison.Ordinal);
        Assert.Contains(plan.OpenPoints, p => p.Contains("too small", StringComparison.Ordinal));
    }

    [Fact]
    public void A_load_that_a_small_bench_supply_cannot_bring_on_is_put_down_to_the_supply()
    {
        var plan = Plan.For(Examples.Kittiwake, new PlanOptions { BenchSupplyLimit = new Current(0.5) });
        Assert.Contains("left rear indicator: the bench supply is too small for it, 0.50 A. Take one that gives more, or the battery.", plan.OpenPoints);
        Assert.DoesNotContain(plan.OpenPoints, p => p.Contains("nothing that was tried", StringComparison.Ordinal));
    }

    [Fact]
    public void A_draw_the_file_does_not_give_is_said_to_be_assumed()
    {
        var box = Examples.Kittiwake.Part("box")!;
        var told = Examples.Kittiwake with { Parts = Examples.Kittiwake.Parts.Replace(box, box with { Settings = box.Settings.With("awake draw", new Value.Number(0.08)) }) };
        Assert.Contains("not in the file: 0.060 A is assumed", Plan.For(Silent(Examples.Kittiwake)).Stages[0].Why, StringComparison.Ordinal);
        Assert.DoesNotContain("assumed", Plan.For(told).Stages[0].Why, StringComparison.Ordinal);

        static Loom Silent(Loom loom) => loom with { Parts = [.. loom.Parts.Select(p => p with { Settings = new Settings([.. p.Settings.Entries.Where(e => e.Key != "awake draw")]) })] };
    }

    [Fact]
    public void A_lead_of_the_lock_that_no_stage_needs_is_on_it_when_it_is_measured()
    {
        var plan = Plan.For(Examples.Of(Relays.Head.Replace("[r, s]\n", "[r, s, t]\n", StringComparison.Ordinal).Replace("riding: [[r, s]]", "riding: [[r, s]]\n      park: [[r, t]]", StringComparison.Ordinal) + """
              tail lamp:
                kind: lamp
                filament: 5 W
            wires:
              - {from: battery.+, to: main fuse.1, size: 1 mm2, length: 0.1 m}
              - {from: main fuse.2, to: lock.r, size: 1 mm2, length: 0.5 m}
              - {from: lock.s, to: tail lamp.+, size: 1 mm2, length: 0.5 m}
              - {from: lock.t, to: tail lamp.+, size: 1 mm2, length: 0.5 m, name: parking feed}
              - {from: tail lamp.-, to: battery.-, size: 1 mm2, length: 0.5 m}
            """));
        Assert.NotNull(plan.Stages[1].Connected.Wire("parking feed"));
        Assert.Contains(plan.Stages[1].Steps, s => s.Act == Act.Measure && s.Do?.Position == "park" && s.Expect[0].Shows.StartsWith("reads tail lamp", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Looms))]
    public void Every_stage_runs_on_the_smallest_standard_fuse_a_quarter_above_its_current_and_no_more_than_the_final_one(string loom)
    {
        foreach (var stage in PlanOf(loom).Stages)
        {
            var expected = Sold.Blades.First(r => r.Amps >= 1.25 * stage.Draws.Amps).Amps;
            Assert.Equal(Math.Min(expected, stage.FirstFuse.Final?.Amps ?? expected), stage.FirstFuse.Rating.Amps);
            Assert.Contains(new Rig(stage.Connected).Now.Fuses, f => f.Rating == stage.FirstFuse.Rating);
        }
    }

    [Fact]
    public void Leaving_the_key_feed_out_leaves_the_box_asleep_where_the_first_stage_expects_it_awake()
    {
        var stage = Kittiwake.Stages[0];
        var key = stage.Steps.Single(s => s.Act == Act.PowerUp && s.Do is not null);
        var asDrawn = new Rig(stage.Connected).Do(key.Do!);
        var without = new Rig(stage.Connected.Without("key feed")).Do(key.Do!);
        Assert.True(asDrawn.Controllers[0].Awake);
        Assert.False(without.Controllers[0].Awake);
        var current = key.Expect.Single(e => e.Band is { Unit: Unit.Amp }).Band!;
        Assert.False(IsInside(current, without.Phases[0].Supply.Amps));
    }

    private static readonly Loom BenchFed = Examples.Of("""
        loomwright: 1
        name: Turnstone
        parts:
          supply: {kind: bench supply, volts: 13 V, limit: 5 A}
          switch: {kind: switch, terminals: [a, b], positions: {"off": [], "on": [[a, b]]}}
          lamp: {kind: lamp, filament: 21 W}
        wires:
          - {from: supply.+, to: switch.a, size: 1 mm2, length: 0.5 m}
          - {from: switch.b, to: lamp.+, size: 1 mm2, length: 0.5 m}
          - {from: lamp.-, to: supply.-, size: 1 mm2, length: 0.5 m}
        """);

    private static Plan PlanOf(string loom) => loom switch
    {
        "kittiwake" => Kittiwake,
        "kittiwake on a bench supply" => Plan.For(Examples.Kittiwake, new PlanOptions { BenchSupplyLimit = new Current(5) }),
        "relays" => Plans.OnTheBench(Relays.Lamp),
        _ => Plan.For(Relays.Lamp, new PlanOptions { BenchSupplyLimit = new Current(10) }),
    };

    private static void AssertSeen(Expectation expected, Step step, Rig rig, Frame frame)
    {
        if (frame.Seen.FirstOrDefault(s => s.Name == expected.What) is { } seen)
        {
            var word = seen.Symbol == Symbol.Flashing ? "flashes" : seen.Symbol.ToString().ToLowerInvariant();
            Assert.Equal(word, expected.Shows);
        }
        else if (expected.Band is { Unit: Unit.Amp } amps)
        {
            Assert.All(frame.Phases, p => Assert.True(IsInside(amps, p.Supply.Amps)));
        }
        else if (expected.Band is { Unit: Unit.Volt } volts)
        {
            Assert.True(IsInside(volts, rig.Volts(step.Meter!.RedTip.Terminal, step.Meter.BlackTip.Terminal)!.Value.Volts));
        }
        else
        {
            Assert.StartsWith("lights on ", expected.What, StringComparison.Ordinal);
            var box = frame.Controllers.Single(c => "lights on " + c.Part == expected.What);
            Assert.EndsWith(box.Awake ? "(awake)" : "(asleep)", expected.Shows, StringComparison.Ordinal);
            Assert.All(box.Lights, l => Assert.Equal(l.Symbol != Symbol.Dark, expected.Shows.Contains(l.Terminal, StringComparison.Ordinal)));
        }
    }

    private static List<string> Clipped(List<Step> steps) => [.. steps.Where(s => s.Text.StartsWith("Red clip", StringComparison.Ordinal) || s.Text.StartsWith("Black clip", StringComparison.Ordinal)).Select(s => s.Marks[0].Terminal.Terminal)];

    private static bool IsInside(Band band, double value) => !(value < band.Least) && !(value > band.Most);
}
