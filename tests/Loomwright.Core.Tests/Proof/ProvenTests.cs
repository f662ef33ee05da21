using Loomwright.Bench;
using Loomwright.Checks;
using Loomwright.Faults;
using Loomwright.Proof;
using Loomwright.Simulation;

namespace Loomwright.Tests.Proof;

public sealed class ProvenTests
{
    private static readonly Proven Kittiwake = Proven.Of(Plan.For(Examples.Kittiwake));

    [Fact]
    public void Every_harmful_mistake_is_caught_limited_or_open_and_every_open_one_has_its_precaution()
    {
        var harm = Kittiwake.Harm;
        Assert.NotEmpty(harm.Faults);
        Assert.Equal(harm.Faults.Length, harm.Count(Fate.Caught) + harm.Count(Fate.Limited) + harm.Count(Fate.Open));
        Assert.True(harm.Count(Fate.Open) <= 0.02 * harm.Faults.Length);
        Assert.All(harm.Faults, f => Assert.Equal(f.Fate == Fate.Open, f.Precaution.Length > 0));
        Assert.All(harm.Faults, f => Assert.Equal(f.Fate == Fate.Open, f.By is null));
    }

    [Fact]
    public void A_caught_mistake_reads_outside_the_band_with_it_and_inside_without_on_exactly_what_is_connected()
    {
        foreach (var caught in Kittiwake.Harm.Faults.Where(f => f.Fate == Fate.Caught && f.Fault is not Fault.Reversed))
        {
            var stage = Kittiwake.Plan.Stages.Single(s => s.Steps.Any(x => x.Id == caught.By));
            var step = stage.Steps.Single(s => s.Id == caught.By);
            var without = Ohms(stage, step, null);
            var with = Ohms(stage, step, caught.Fault);
            var band = step.Expect[0].Band!;
            Assert.True(IsInside(band, without), $"{caught.By} without");
            Assert.False(IsInside(band, with), FormattableString.Invariant($"{caught.By} with {caught.Fault}: {with}"));
            Assert.True(caught.Margin > 1);
            Assert.True(caught.Stage >= stage.Number);
        }
    }

    [Fact]
    public void What_stays_open_and_harms_in_two_ways_is_met_with_both_precautions_that_of_its_first_step_first()
    {
        var stage = new StageEvidence(1, [], [], [], null, [HarmKind.StarterTurns, HarmKind.ShortsSupply], "s1.power-up.4", 3, HasEffect: true);
        var later = stage with { Stage = 2, Harm = [HarmKind.Overheats] };
        var harm = Assert.Single(new Prover(Kittiwake.Plan).Harms([new Evidence(new Fault.Open("stop lamp feed"), [stage, later])]).Faults);
        Assert.Equal(Fate.Open, harm.Fate);
        Assert.Equal(string.Join(' ', new[] { HarmKind.StarterTurns, HarmKind.ShortsSupply, HarmKind.Overheats }.Select(Precautions.For)), harm.Precaution);
    }

    [Fact]
    public void Every_mistake_stands_in_exactly_one_class()
    {
        var coverage = Kittiwake.Coverage;
        Assert.Equal(Catalogue.Of(Kittiwake.Plan.Whole!).Select(f => f.ToString()), coverage.Faults.Select(f => f.Fault.ToString()));
        Assert.Equal(coverage.Faults.Length, Enum.GetValues<SeenBy>().Sum(coverage.Count));
        Assert.All(coverage.Faults, f => Assert.Equal(f.SeenBy switch { SeenBy.Two => 2, SeenBy.One => 1, _ => 0 }, f.By.Length));
        Assert.True(coverage.Seen > coverage.SeenByLooking);
    }

    [Fact]
    public void A_mistake_is_tried_with_shortcuts_and_without_to_the_same_end()
    {
        foreach (var stage in Kittiwake.Plan.Stages)
        {
            var played = new Played(stage.Connected, stage.Steps);
            foreach (var fault in Catalogue.Of(stage.Connected).Where((_, i) => i % 7 == 0))
            {
                var touch = new Touch(played.Wiring, fault);
                var quick = played.Differing(touch).ToDictionary(d => d.Moment, d => d.With.State);
                var settler = new Settler(touch.Wiring);
                var now = settler.Settle(touch.Wiring.Start());
                foreach (var (moment, operation) in stage.Steps.Where(s => s.PowerOn && (s.Do is not null || s.Wait is not null)).Select((s, i) => (i + 1, s)).Prepend((0, null!)))
                {
                    now = operation is null ? now : operation.Do is { } set ? settler.Settle(Time.Moved(now.State, Place(played.Wiring, set.Control), Position(played.Wiring, set))) : Time.Pass(settler, now, operation.Wait!.Value).Last().Settled;
                    Assert.True(now.State == quick.GetValueOrDefault(moment, played.Healthy[moment].State) || fault is Fault.Setting, FormattableString.Invariant($"{fault} at moment {moment}"));
                }
            }
        }
    }

    // What sits between two pins of a load controller differs from make to make: protection diodes, dividers (common practice, no source).
    [Fact]
    public void Between_two_pins_of_the_box_kilohms_are_as_good_as_no_reading()
    {
        var pins = Kittiwake.Plan.Stages.SelectMany(s => s.Steps)
            .Where(s => s is { Meter.Dial: Dial.Ohms, Marks: [{ Terminal.Part: "box" }, { Terminal.Part: "box" }] }).SelectMany(s => s.Expect).ToList();
        Assert.NotEmpty(pins);
        Assert.All(pins, e => Assert.True(e.Band is { Least: 100, Most: null }, $"{e.What}: {e.Shows}"));
    }

    [Fact]
    public void Two_runs_prove_the_same() => Assert.Equal(ProofText.Of(Kittiwake), ProofText.Of(Proven.Of(Plan.For(Examples.Kittiwake))));

    [Fact]
    public void Any_stage_left_out_leaves_exactly_the_mistakes_unseen_that_are_named_for_it()
    {
        var prover = new Prover(Kittiwake.Plan);
        foreach (var stage in Kittiwake.Plan.Stages)
        {
            var shorter = prover.Without(stage.Number);
            var lost = Seen(Kittiwake.Coverage).Except(Seen(shorter.Coverage(shorter.Try([.. Kittiwake.Coverage.Faults.Select(f => f.Fault)]))), StringComparer.Ordinal);
            Assert.Equal(Kittiwake.Coverage.LostWithout(stage.Number).Select(f => f.ToString()).Order(StringComparer.Ordinal), lost.Order(StringComparer.Ordinal));
        }
    }

    [Fact]
    public void A_wire_that_goes_round_a_fuse_is_told_with_the_fuse_out()
    {
        var fuses = Kittiwake.Plan.Stages.SelectMany(s => s.Connected.Parts).Where(p => p.Kind == "fuse").Select(p => p.Name).Distinct().ToList();
        Assert.NotEmpty(fuses);
        foreach (var fuse in fuses)
        {
            var round = Kittiwake.Coverage.Faults.Single(f => f.Fault.ToString() == $"short: {fuse}.1 to {fuse}.2");
            var step = Kittiwake.Plan.Stages.SelectMany(s => s.Steps).First(s => s.Id == round.By[0]);
            Assert.Contains($"of {fuse}. From", step.Text, StringComparison.Ordinal);
            Assert.Contains(fuse, step.Unplugged);
            Assert.Contains(Kittiwake.Plan.Stages.SelectMany(s => s.Steps), s => s.Text.StartsWith($"Take the fuse out of {fuse}.", StringComparison.Ordinal));

            // Back only when the last reading is entered.
            foreach (var stage in Kittiwake.Plan.Stages.Where(s => s.Steps.Any(x => x.Unplugged.Contains(fuse))))
            {
                var back = stage.Steps[stage.Steps.IndexOf(stage.Steps.Last(s => s.Unplugged.Contains(fuse))) + 1];
                Assert.Equal(($"Put the fuse back into {fuse}.", true), (back.Text, back.Expect.IsEmpty));
            }
        }
    }

    [Fact]
    public void Where_a_lead_stands_in_for_the_lock_only_wires_that_are_on_the_bench_are_named()
    {
        foreach (var stage in Kittiwake.Plan.Stages)
        {
            foreach (var tip in stage.Steps.Where(s => s.Meter?.Dial == Dial.Ohms).SelectMany(s => new[] { s.Meter!.RedTip, s.Meter.BlackTip }).Where(t => t.Terminal.Part == "lock"))
            {
                Assert.StartsWith("the wire for lock", tip.ToString(), StringComparison.Ordinal);
                Assert.Contains(stage.Connected.Wires, w => w.From == tip.Terminal || w.To == tip.Terminal);
            }

            Assert.DoesNotContain(stage.Steps, s => s.Text.StartsWith("With ", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void What_is_seen_once_says_why_there_is_no_second_look_and_measurements_that_were_added_shift_no_other_steps_id()
    {
        Assert.All(Kittiwake.Coverage.Faults, f => Assert.Equal(f.SeenBy == SeenBy.One, f.WhyOnce is not null));
        var plain = Plan.For(Examples.Kittiwake).Stages.SelectMany(s => s.Steps).ToDictionary(s => s.Id, s => s.Text);
        var proven = Kittiwake.Plan.Stages.SelectMany(s => s.Steps).ToDictionary(s => s.Id, s => s.Text);
        Assert.True(proven.Count > plain.Count);
        Assert.All(plain, s => Assert.Equal(s.Value, proven[s.Key]));
    }

    [Theory]
    [InlineData("kittiwake")]
    [InlineData("sandpiper")]
    public void A_whole_bike_has_eight_single_mistakes_a_wire_and_each_is_in_exactly_one_class(string name)
    {
        var loom = Examples.Read($"examples/{name}/{name}.loom.yaml");
        var faults = Catalogue.Of(loom);
        Assert.True(faults.Length >= 8 * loom.Wires.Length, FormattableString.Invariant($"{faults.Length} on {loom.Wires.Length} wires"));
        var lit = new Stage(0, "all of it", "", default, Kittiwake.Plan.Stages[0].FirstFuse, [new Step("s0.power-up.1", Act.PowerUp, "Both clips on.") { PowerOn = true }], loom);
        var prover = new Prover(new Plan("", [lit], []) { Whole = loom });
        var coverage = prover.Coverage(prover.Try(faults));
        Assert.Equal(faults.Select(f => f.ToString()), coverage.Faults.Select(f => f.Fault.ToString()));
        Assert.Equal(faults.Length, coverage.Faults.Select(f => f.Fault.ToString()).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.Equal(faults.Length, Enum.GetValues<SeenBy>().Sum(coverage.Count));
    }

    [Fact]
    public void A_plan_is_proved_with_shortcuts_and_without_to_the_same_end()
    {
        var plan = Kittiwake.Plan with { Stages = Kittiwake.Plan.Stages[..2] };
        var (quick, whole) = (new Prover(plan), new Prover(plan, isWhole: true));
        var faults = Catalogue.Of(plan.Whole!).Where((_, i) => i % 3 == 0).ToList();
        Assert.Equal(
            quick.Coverage(quick.Try([.. faults])).Faults.Select(Told),
            whole.Coverage(whole.Try([.. faults])).Faults.Select(Told));

        static string Told(FaultSeen f) => $"{f.Fault} {f.SeenBy} {string.Join(' ', f.By)} {string.Join(' ', f.Stages)}";
    }

    private static IEnumerable<string> Seen(Coverage coverage) => coverage.Faults.Where(f => f.SeenBy is SeenBy.One or SeenBy.Two).Select(f => f.Fault.ToString());

    private static double Ohms(Stage stage, Step step, Fault? fault)
    {
        var loom = step.Unplugged.IsEmpty ? stage.Connected : Unplugged.Of(stage.Connected, new Paths(stage.Connected), step.Unplugged);
        var wiring = Wiring.Of(fault is null ? loom : Patch.Apply(loom, fault));
        var state = wiring.Start();
        foreach (var set in stage.Steps.TakeWhile(s => s.Id != step.Id).Append(step).Where(s => s.Act == Act.Measure).Select(s => s.Do).OfType<Operation.Set>())
        {
            state = Time.Moved(state, Place(wiring, set.Control), Position(wiring, set));
        }

        return Meter.Ohms(wiring, state, step.Meter!.RedTip.Terminal, step.Meter.BlackTip.Terminal)?.Ohms ?? double.PositiveInfinity;
    }

    private static bool IsInside(Band band, double value) => value >= (band.Least ?? double.NegativeInfinity) && value <= (band.Most ?? double.PositiveInfinity);

    private static int Place(Wiring wiring, string control) => wiring.Controls.IndexOf(wiring.Controls.First(c => Loomwright.Text.Names.Same(c.Name, control)));

    private static int Position(Wiring wiring, Operation.Set set) => Wiring.PlaceOf(wiring.Controls[Place(wiring, set.Control)], set.Position)!.Value;
}
