using Loomwright.Bench;
using Loomwright.Bench.OnTheBike;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;

namespace Loomwright.Tests.Bench;

/// <summary>The plan of the finished loom on the bike: what stays off until its stage, which caution stands where, what a bad joint reads.</summary>
public sealed class OnTheBikeTests
{
    private static readonly Dictionary<string, Plan> Made = new(StringComparer.Ordinal)
    {
        ["kittiwake"] = Plans.OnTheBike(Plans.Bike("kittiwake")),
        ["sandpiper"] = Plans.OnTheBike(Plans.Bike("sandpiper")),
        ["negative ground"] = Plans.OnTheBike(Starting.Bike),
        ["positive ground"] = Plans.OnTheBike(Starting.PositiveGround),
        ["breaker"] = BikePlan.For(Starting.Of("negative", guard: "breaker")),
        ["load resistor"] = BikePlan.For(WithResistor),
    };

    public static TheoryData<string> Bikes => [.. Made.Keys];

    private static Loom WithResistor => Starting.Bike with
    {
        Parts = Starting.Bike.Parts.Add(new Part("load resistor", "resistor", null, Settings.None.With("resistance", new Value.Number(7)))),
        Wires =
        [
            .. Starting.Bike.Wires,
            new Wire("resistor feed", new("lock", "s"), new("load resistor", "1"), new(2.5), null, new(0.5), null, null),
            new Wire("resistor ground", new("load resistor", "2"), new("battery", "-"), new(2.5), null, new(0.5), null, null),
        ],
    };

    [Theory]
    [InlineData("kittiwake")]
    [InlineData("sandpiper")]
    [InlineData("positive ground")]
    public void The_plan_on_the_bike_is_the_accepted_one(string bike) => Golden.Check($"plan/on-the-bike-{bike.Replace(' ', '-')}.txt", PlanText.Of(Made[bike]));

    [Fact]
    public void It_goes_from_dead_checks_to_charging()
    {
        Assert.Equal(["dead checks", "first power", "one at a time", "two at a time", "volts lost under load", "key-off current", "cranking", "charging"], Made["kittiwake"].Stages.Select(s => s.Title));
        Assert.Contains("fuel pump, ignition coil", Made["negative ground"].Stages.Select(s => s.Title));
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Every_powered_step_expects_what_a_simulation_of_what_is_connected_shows(string bike) => Assert.All(Frames(Made[bike]).Where(x => x.Step.Do is not null), x =>
        Assert.All(x.Step.Expect.Where(e => e.Band is null), e => Assert.True(e.What == "everything else" || x.Frame.Seen.Any(s => s.Name == e.What && Words.Of(s.Symbol) == e.Shows), $"{x.Step.Id} {e.What}")));

    [Fact]
    public void Where_something_gets_hot_on_the_bike_the_engine_and_the_key_are_off_before_the_grounded_lead()
    {
        Assert.Equal(["Stop the engine with its switch, and wait until it stands (engine to stopped).", "Set lock to off.", "Battery off: battery - first."], WayOff.Of(Made["kittiwake"].Stages.Single(s => s.Title == "charging")));
        Assert.Equal(["Set lock to off.", "Battery off: battery + first."], WayOff.Of(Made["positive ground"].Stages.Single(s => s.Title == "cranking")));
    }

    [Fact]
    public void Where_something_gets_hot_on_the_bench_a_clip_comes_off_before_the_key() =>
        Assert.Equal(["Black clip lead on the end of wire battery minus (not the meter's) comes off battery -, capped.", "Open the bench switch in the lead that stands in for lock."], WayOff.Of(Plan.For(Examples.Kittiwake).Stages[0]));

    [Theory]
    [MemberData(nameof(Bikes))]
    public void The_caution_stands_at_the_act_or_before_it(string bike)
    {
        var plan = Made[bike];
        var said = new HashSet<string>(StringComparer.Ordinal);
        var frames = Frames(plan).ToDictionary(x => x.Step.Id, x => x.Frame, StringComparer.Ordinal);
        foreach (var step in plan.Stages.SelectMany(s => s.Steps))
        {
            said.UnionWith(step.Cautions);
            var frame = frames.GetValueOrDefault(step.Id);
            Needs(step.Meter?.Dial == Dial.Ohms, Cautions.OhmsPowerOff);
            Needs(step.Meter?.Dial == Dial.Amps, Cautions.InGroundLead);
            Needs(step.Meter?.Dial == Dial.Amps, Cautions.AmpsSocket);
            Needs(step.Meter?.Dial == Dial.Volts, Cautions.LiveProbe);
            Needs(step.PowerOn, Cautions.FirstPower);
            Needs(step.PowerOn, Cautions.Stand);
            Needs(step.PowerOn, Cautions.HotOnTheBike);
            Needs(frame?.Seen.Any(s => s.Part == "starter" && s.Symbol == Symbol.Turns) == true, Cautions.Starter);
            Needs(frame?.Seen.Any(s => s.Part == "starter" && s.Symbol == Symbol.Turns) == true && !IsCoilOff(step), Cautions.MayStart);
            Needs(frame?.Seen.Any(s => s.Part == "fuel pump" && s.Symbol == Symbol.Turns) == true, Cautions.Pump);
            Needs(frame?.Seen.Any(s => s.Part is "ignition coil" or "coil" && s.Symbol == Symbol.Works) == true, Cautions.Coil);
            Needs(frame?.Seen.Any(s => s.Symbol == Symbol.Sounds) == true, Cautions.Horn);
            Needs(frame?.Controls.Any(c => c is { Control: "engine", AtRest: false }) == true, Cautions.Running);
            Needs(bike == "load resistor" && frame?.Controls.Any(c => c is { Control: "lock", Position: "riding" }) == true, Cautions.HotResistor);

            bool IsCoilOff(Step step) => plan.Stages.Single(s => s.Steps.Contains(step)).Steps.Any(s => s is { Act: Act.Connect, Part: "ignition coil" } && s.Text.Contains("off and capped", StringComparison.Ordinal));

            void Needs(bool isSo, string caution) => Assert.True(!isSo || said.Contains(caution), $"{bike} {step.Id}: {caution}");
        }

        var all = plan.Stages.SelectMany(s => s.Steps).SelectMany(s => s.Cautions).Where(c => c != Cautions.InGear).ToList();
        Assert.Equal(all.Distinct(StringComparer.Ordinal), all);
    }

    [Fact]
    public void Wherever_the_gear_goes_in_to_try_the_starter_and_the_clutch_is_moved_then_the_step_warns_of_an_engine_that_starts()
    {
        var cranking = Made["kittiwake"].Stages.Single(s => s.Title == "cranking");
        var (frames, warned) = (Frames(Made["kittiwake"]).Where(x => cranking.Steps.Contains(x.Step)).ToList(), cranking.Steps.Where(s => s.Cautions.Contains(Cautions.InGear)));
        var inGear = frames.Where(x => x.Frame.Controls.Any(c => c is { Control: "gearbox", AtRest: false })).ToList();
        Assert.Contains(inGear, x => x.Frame.Seen.Any(s => s is { Part: "starter", Symbol: Symbol.Turns }));
        Assert.Equal(inGear.Where(x => x.Step.Do is { Control: "gearbox" or "clutch" }).Select(x => x.Step), warned);
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Nothing_is_closed_onto_the_battery_by_a_step_that_says_power_is_off(string bike) => Assert.All(
        Made[bike].Stages.SelectMany(s => s.Steps).Where(s => s.Act is Act.PowerUp or Act.Operate),
        s => Assert.True(s.PowerOn && s.Meter?.PowerOn != false, $"{s.Id} {s.Text}"));

    [Theory]
    [MemberData(nameof(Bikes))]
    public void What_power_down_puts_back_was_put_in_its_stage_by_a_step_that_names_the_same_part(string bike) => Assert.All(
        Made[bike].Stages,
        stage => Assert.Empty(stage.Steps.Where(s => s.Act == Act.PowerDown).Select(s => s.Part).OfType<string>().Except(stage.Steps.Where(s => s.Act == Act.Connect).Select(s => s.Part).OfType<string>())));

    [Theory]
    [InlineData("negative ground")]
    [InlineData("positive ground")]
    [InlineData("breaker")]
    public void With_a_button_that_sticks_the_starter_turns_in_no_stage_before_cranking_and_pump_and_coil_in_none_before_theirs(string bike)
    {
        var plan = Made[bike];
        foreach (var stage in plan.Stages.TakeWhile(s => s.Title != "cranking"))
        {
            var rig = new Rig(Patch.Apply(stage.Connected, new Fault.Stuck("start button", "pressed")));
            var frames = stage.Title == "dead checks" ? [] : rig.Play(stage.Steps.Where(s => s.PowerOn).Select(s => s.Do).OfType<Operation.Set>());
            Assert.DoesNotContain(frames.SelectMany(f => f.Seen), s => s is { Part: "starter", Symbol: Symbol.Turns });
            if (stage.Number < 4)
            {
                Assert.DoesNotContain(frames.SelectMany(f => f.Seen), s => s.Part is "fuel pump" or "ignition coil");
            }
        }

        var cable = plan.Stages.Single(s => s.Title == "cranking").Steps.Where(s => s is { Act: Act.Connect, Wire: not null }).ToList();
        Assert.Equal("starter cable", Assert.Single(cable).Wire);
        Assert.Contains(plan.Stages[1].Steps, s => s.Wire == "starter cable" && s.Text.Contains("stays off until cranking", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_only_a_breaker_stands_at_the_battery_one_small_fuse_goes_before_everything()
    {
        var stage = Made["breaker"].Stages[1];
        Assert.Contains(stage.Steps, s => s.Text.StartsWith("bench fuse: a holder with the ", StringComparison.Ordinal));
        Assert.Contains(stage.Steps, s => s.Act == Act.PowerDown && s.Text.StartsWith("bench fuse: out again", StringComparison.Ordinal));
        Assert.Equal(stage.FirstFuse.Rating.Amps, stage.Connected.Part("bench fuse")!.Settings.Number("rating"));
        Assert.Equal(20, Made["breaker"].Stages[2].FirstFuse.Rating.Amps);
    }

    [Theory]
    [InlineData("negative ground", "lamp feed")]
    [InlineData("positive ground", "lamp feed")]
    [InlineData("positive ground", "lamp ground")]
    public void A_joint_of_half_an_ohm_reads_outside_the_volts_that_may_be_lost_whichever_side_is_on_ground(string bike, string wire) =>
        Outside(Made[bike].Stages.Single(s => s.Title == "volts lost under load"), wire);

    [Theory]
    [InlineData("negative")]
    [InlineData("positive")]
    public void The_same_joint_on_the_bench_does_too(string ground) => Outside(Plan.For(Starting.Of(ground)).Stages.First(s => s.Steps.Any(x => x.Text.StartsWith("Lost on the feed of head lamp", StringComparison.Ordinal))), "lamp feed");

    [Fact]
    public void Volts_lost_read_with_the_probes_exchanged_are_outside_too() =>
        Assert.All(Made["positive ground"].Stages.SelectMany(s => s.Steps).SelectMany(s => s.Expect).Where(e => e.What == "volts lost"), e =>
        {
            Assert.True(e.Band!.Computed >= 0);
            Assert.Equal(-e.Band.Most, e.Band.Least);
            Assert.StartsWith("at most ", e.Shows, StringComparison.Ordinal);
        });

    [Fact]
    public void The_engine_is_started_by_a_step_that_says_so_and_stopped_before_the_battery_comes_off()
    {
        var steps = Made["kittiwake"].Stages.Single(s => s.Title == "charging").Steps;
        var start = steps.Single(s => s.Cautions.Contains(Cautions.Running));
        Assert.StartsWith("On the stand, in neutral, wheel free: start the engine", start.Text, StringComparison.Ordinal);
        var stop = steps.Single(s => s.Do is { Control: "engine", Position: "stopped" });
        Assert.True(steps.IndexOf(stop) < steps.IndexOf(steps.Single(s => s.Text.StartsWith("Battery off", StringComparison.Ordinal))));
    }

    [Fact]
    public void Where_no_load_reads_low_nothing_is_asked_to_be_unplugged()
    {
        var plan = BikePlan.For(Examples.Of("""
            loomwright: 1
            name: Sandpiper
            parts:
              battery: {kind: battery, chemistry: agm}
              main fuse: {kind: fuse, rating: 5 A}
              button: {kind: button}
              tail lamp: {kind: lamp, led: 2 W}
            wires:
              - {from: battery.+, to: main fuse.1, size: 1 mm2, length: 0.2 m}
              - {from: main fuse.2, to: button.1, size: 1 mm2, length: 0.2 m}
              - {from: button.2, to: tail lamp.+, size: 1 mm2, length: 0.2 m}
              - {from: tail lamp.-, to: battery.-, size: 1 mm2, length: 0.2 m}
            """));
        var steps = plan.Stages[0].Steps;
        Assert.Equal("Key off, engine still. Battery off, both leads: battery - first. Cap both. Everything else as it stays.", steps[0].Text);
        Assert.Equal("Cap every lead that stays free.", steps[^1].Text);
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void No_ohmmeter_is_put_on_a_post_of_the_battery(string bike) => Assert.All(
        Made[bike].Stages.SelectMany(s => s.Steps).Where(s => s.Meter?.Dial == Dial.Ohms).SelectMany(s => new[] { s.Meter!.RedTip, s.Meter.BlackTip }).Where(t => t.Terminal.Part == "battery"),
        t => Assert.StartsWith("the lead of battery", t.ToString(), StringComparison.Ordinal));

    [Theory]
    [InlineData("sandpiper", "lock.key")]
    [InlineData("sandpiper", "light switch.feed")]
    [InlineData("sandpiper", "light switch.tail")]
    [InlineData("sandpiper", "light switch.head")]
    [InlineData("kittiwake", "lock.s")]
    [InlineData("negative ground", "lock.s")]
    [InlineData("negative ground", "start button.2")]
    [InlineData("positive ground", "start button.2")]
    public void A_short_behind_a_switch_behind_the_lock_reads_outside_a_band_before_power(string bike, string at)
    {
        var stage = Made[bike].Stages[0];
        var home = bike == "positive ground" ? "+" : "-";
        var (part, terminal) = (at[..at.IndexOf('.', StringComparison.Ordinal)], at[(at.IndexOf('.', StringComparison.Ordinal) + 1)..]);
        var unplugged = stage.Steps.Select(s => s.Unplugged).First(u => !u.IsEmpty);
        var loom = Unplugged.Of(stage.Connected, new Loomwright.Checks.Paths(stage.Connected), unplugged);
        var (whole, shorted) = (Wiring.Of(loom), Wiring.Of(Patch.Apply(loom, new Fault.Shorted(new(part, terminal), new("battery", home)))));
        var (rest, state) = (whole.Start(), whole.Start());
        var outside = 0;
        foreach (var step in stage.Steps.Where(s => s.Act == Act.Measure))
        {
            if (step.Do is { } set)
            {
                var control = whole.Controls.IndexOf(whole.Controls.First(c => c.Name == set.Control));
                state = Time.Moved(state, control, Wiring.PlaceOf(whole.Controls[control], set.Position)!.Value);
            }

            if (step.Meter is { } meter)
            {
                Assert.True(IsInside(step.Expect[0].Band!, Ohms(whole, meter)), step.Id);
                outside += IsInside(step.Expect[0].Band!, Ohms(shorted, meter)) ? 0 : 1;
            }
        }

        Assert.NotEqual(0, outside);
        Assert.Equal(rest.Positions, state.Positions);

        double Ohms(Wiring wiring, MeterCard card) => Meter.Ohms(wiring, state, card.RedTip.Terminal, card.BlackTip.Terminal)?.Ohms ?? double.PositiveInfinity;
    }

    private static void Outside(Stage stage, string wire)
    {
        var (whole, broken) = (new Rig(stage.Connected), new Rig(Patch.Apply(stage.Connected, new Fault.High(wire, 0.5))));
        var readings = 0;
        var outside = 0;
        foreach (var step in stage.Steps.Where(s => s.PowerOn))
        {
            if (step.Do is { } set)
            {
                whole.Do(set);
                broken.Do(set);
            }

            foreach (var expected in step.Expect.Where(e => e.What.EndsWith("volts lost", StringComparison.Ordinal)))
            {
                readings++;
                Assert.True(IsInside(expected.Band!, Volts(whole, step)), step.Text);
                outside += IsInside(expected.Band!, Volts(broken, step)) ? 0 : 1;
            }
        }

        Assert.True(readings > 0);
        Assert.Equal(1, outside);
    }

    private static double Volts(Rig rig, Step step) => rig.Volts(step.Meter!.RedTip.Terminal, step.Meter.BlackTip.Terminal)!.Value.Volts;

    private static bool IsInside(Band band, double value) => !(value < band.Least || value > band.Most);

    private static IEnumerable<(Step Step, Frame Frame)> Frames(Plan plan)
    {
        foreach (var stage in plan.Stages)
        {
            var rig = new Rig(stage.Connected);
            foreach (var step in stage.Steps.Where(s => s.PowerOn))
            {
                yield return (step, step.Do is { } set ? rig.Do(set) : step.Wait is { } time ? rig.Do(new Operation.Wait(time)) : rig.Now);
            }
        }
    }
}
