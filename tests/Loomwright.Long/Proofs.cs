using System.Text;
using Loomwright.Bench;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Parts;
using Loomwright.Proof;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Long;

/// <summary>What the plans of both whole bikes catch and see, once as the program says it and once simulated to the end (<c>--count 1</c>: the smaller bike alone; <c>--only kittiwake</c>: that one).</summary>
internal static class Proofs
{
    private static readonly string[] Bikes = ["sandpiper", "kittiwake"];

    // A common hand meter on ohms, its leads taken off (docs/proof.md).
    private const double ToleranceShare = 0.02;
    private const double ToleranceOhms = 0.2;

    public static string Run(LongRun run)
    {
        var text = new StringBuilder();
        foreach (var name in Bikes.Where(b => run.Only is null || run.Only == b).Take(run.Count ?? Bikes.Length))
        {
            var path = $"examples/{name}/{name}.loom.yaml";
            var bike = Bike.Read(new SourceText(path, File.ReadAllText(path)));
            var proven = bike.Proof();
            Console.Error.WriteLine($"{name}: proved; now to the end");
            text.Append(FormattableString.Invariant($"## {bike.Loom!.Name}\n\n"));
            Harm(run, text, proven);
            Caught(run, text, proven);
            var whole = new Prover(proven.Plan, isWhole: true);
            var evidence = whole.Try([.. proven.Coverage.Faults.Select(f => f.Fault)]);
            Console.Error.WriteLine($"{name}: simulated to the end; now with stages left out");
            ToTheEnd(run, text, proven, whole.Harms(evidence), whole.Coverage(evidence));
            Classes(run, text, proven);
            LeftOut(run, text, proven, whole);
        }

        return text.ToString();
    }

    private static void Harm(LongRun run, StringBuilder text, Proven proven)
    {
        var harm = proven.Harm;
        text.Append(FormattableString.Invariant($"{harm.Faults.Length} single faults harm = {harm.Count(Fate.Caught)} caught + {harm.Count(Fate.Limited)} limited + {harm.Count(Fate.Open)} open.\n\n| harm | faults | caught | limited | open |\n|---|---|---|---|---|\n"));
        foreach (var kind in Enum.GetValues<HarmKind>())
        {
            var shown = MustShow(kind, proven.Plan.Whole!);
            text.Append(FormattableString.Invariant($"| {HarmWords.Of(kind)} | {(shown || harm.Count(kind) > 0 ? harm.Count(kind).ToString(System.Globalization.CultureInfo.InvariantCulture) : "0: nothing on this bike does it")} | {harm.Count(kind, Fate.Caught)} | {harm.Count(kind, Fate.Limited)} | {harm.Count(kind, Fate.Open)} |\n"));
            run.Failed |= shown && harm.Count(kind) == 0;
        }

        run.Failed |= harm.Faults.Length != harm.Count(Fate.Caught) + harm.Count(Fate.Limited) + harm.Count(Fate.Open)
            || harm.Count(Fate.Open) > 0.02 * harm.Faults.Length
            || harm.Faults.Any(f => f.Kinds.IsEmpty || f.Kinds.Any(k => !harm.Possible.Contains(k)) || (f.Fate == Fate.Open) != (f.Precaution.Length > 0));
        text.Append('\n');
    }

    // By what stands in the file, apart from what the proof found.
    private static bool MustShow(HarmKind kind, Loom loom) => kind switch
    {
        HarmKind.Overheats or HarmKind.ShortsSupply => true,
        HarmKind.PastRating => loom.Parts.Any(p => p.Kind is "load controller" or "diode"),
        HarmKind.StarterTurns => loom.Parts.Any(p => p.Kind is "starter" or "pre-engaged starter"),
        HarmKind.PumpRuns => loom.Parts.Any(p => p.Kind.Contains("pump", StringComparison.Ordinal)),
        HarmKind.CoilFed => loom.Parts.Any(p => p.Kind.Contains("coil", StringComparison.Ordinal) || p.Kind.Contains("horn", StringComparison.Ordinal)),
        HarmKind.EngineRunsOn => loom.Parts.Any(p => p.Kind == "kill switch"),
        _ => false,
    };

    // The design with the fault in its file's place, compiled anew, its controls moved as the steps say.
    private static void Caught(LongRun run, StringBuilder text, Proven proven)
    {
        var (verified, wrong, closest) = (0, new List<string>(), double.PositiveInfinity);
        foreach (var caught in proven.Harm.Faults.Where(f => f.Fate == Fate.Caught))
        {
            var stage = proven.Plan.Stages.Single(s => s.Steps.Any(x => x.Id == caught.By));
            var step = stage.Steps.Single(s => s.Id == caught.By);
            var (without, with) = (Ohms(stage, step, null), Ohms(stage, step, caught.Fault));
            var band = step.Expect[0].Band!;
            var apart = double.IsInfinity(with) != double.IsInfinity(without) ? double.PositiveInfinity
                : Math.Abs(with - without) / ((ToleranceShare * Math.Max(with, without)) + ToleranceOhms);
            var isVerified = IsInside(band, without) && !IsInside(band, with) && apart > 1 && stage.Number <= caught.Stage;
            verified += isVerified ? 1 : 0;
            closest = Math.Min(closest, apart);
            if (!isVerified)
            {
                wrong.Add(FormattableString.Invariant($"{caught.Fault} by {caught.By}: {without:G4} Ω without, {with:G4} Ω with"));
            }
        }

        run.Failed |= wrong.Count > 0;
        text.Append(FormattableString.Invariant($"Caught, each compiled anew with and without the fault and measured at its step: {verified} read inside the band without and outside with, by more than the meter's tolerance (2 % and 0.2 Ω); the closest by {closest:0.0} times it. {wrong.Count} did not{(wrong.Count == 0 ? "" : ": " + string.Join("; ", wrong))}.\n\n"));
    }

    private static double Ohms(Stage stage, Step step, Fault? fault)
    {
        var loom = step.Unplugged.IsEmpty ? stage.Connected : Unplugged.Of(stage.Connected, new Paths(stage.Connected), step.Unplugged);
        var wiring = Wiring.Of(fault is null ? loom : Patch.Apply(loom, fault));
        var state = wiring.Start();
        foreach (var set in stage.Steps.TakeWhile(s => s.Id != step.Id).Append(step).Where(s => s.Act == Act.Measure).Select(s => s.Do).OfType<Operation.Set>())
        {
            var control = wiring.Controls.Select((c, i) => (c, i)).First(c => Names.Same(c.c.Name, set.Control));
            state = Time.Moved(state, control.i, Wiring.PlaceOf(control.c, set.Position)!.Value);
        }

        return Meter.Ohms(wiring, state, Tip(wiring, fault, step.Meter!.RedTip.Terminal), Tip(wiring, fault, step.Meter.BlackTip.Terminal))?.Ohms ?? double.PositiveInfinity;
    }

    // The tip goes to the mark on the case, and the case is what was turned round.
    private static TerminalRef Tip(Wiring wiring, Fault? fault, TerminalRef at) =>
        fault is Fault.Reversed turned && Names.Same(turned.Part, at.Part) && wiring.Parts.First(p => Names.Same(p.Name, at.Part)).Model is { Polarity: { } poles } model && (model.Controller is not null || model.Supply is not null)
            ? Names.Same(at.Terminal, poles.Plus) ? at with { Terminal = poles.Minus } : Names.Same(at.Terminal, poles.Minus) ? at with { Terminal = poles.Plus } : at
            : at;

    private static bool IsInside(Band band, double value) => value >= (band.Least ?? double.NegativeInfinity) && value <= (band.Most ?? double.PositiveInfinity);

    private static void ToTheEnd(LongRun run, StringBuilder text, Proven proven, HarmList harm, Coverage coverage)
    {
        var harmsOther = proven.Harm.Faults.Select(Told).Except(harm.Faults.Select(Told), StringComparer.Ordinal).Concat(harm.Faults.Select(Told).Except(proven.Harm.Faults.Select(Told), StringComparer.Ordinal)).ToList();
        var seenOther = proven.Coverage.Faults.Zip(coverage.Faults).Where(p => Seen(p.First) != Seen(p.Second)).Select(p => $"{Seen(p.First)} / {Seen(p.Second)}").ToList();
        run.Failed |= harmsOther.Count + seenOther.Count > 0;
        text.Append(FormattableString.Invariant($"Every fault in every stage simulated to the end, no shortcut taken: {harmsOther.Count} harm otherwise{Listed(harmsOther)}, {seenOther.Count} are seen otherwise{Listed(seenOther)}.\n\n"));

        static string Told(HarmfulFault f) => FormattableString.Invariant($"{f.Fault}: {string.Join(", ", f.Kinds)}, {f.Stage} {f.Step}, {f.Fate} {f.By}");
        // Of more than two checks that are equally clear any two may be named.
        static string Seen(FaultSeen f) => $"{f.Fault}: {f.SeenBy}, stages {string.Join(", ", f.Stages)}";
    }

    private static void Classes(LongRun run, StringBuilder text, Proven proven)
    {
        var (faults, wires) = (proven.Coverage.Faults, proven.Plan.Whole!.Wires.Length);
        var isEachOnce = Catalogue.Of(proven.Plan.Whole).Select(f => f.ToString()).SequenceEqual(faults.Select(f => f.Fault.ToString()))
            && faults.Select(f => f.Fault.ToString()).Distinct(StringComparer.Ordinal).Count() == faults.Length
            && faults.Length == Enum.GetValues<SeenBy>().Sum(proven.Coverage.Count);
        run.Failed |= !isEachOnce || faults.Length < 8 * wires;
        text.Append(FormattableString.Invariant($"{faults.Length} single faults on {wires} wires ({(double)faults.Length / wires:0.0} a wire), {(isEachOnce ? "each in exactly one class" : "NOT each in exactly one class")}: {string.Join("; ", Enum.GetValues<SeenBy>().Select(s => FormattableString.Invariant($"{ProofText.Words(s)} {proven.Coverage.Count(s)}")))}. The plan sees {proven.Coverage.Seen:P1}, operating everything and looking {proven.Coverage.SeenByLooking:P1}.\n\n"));
    }

    private static void LeftOut(LongRun run, StringBuilder text, Proven proven, Prover whole)
    {
        text.Append("| stage left out | named as no longer seen | no longer seen by the plan computed anew without it | differ |\n|---|---|---|---|\n");
        var faults = proven.Coverage.Faults.Select(f => f.Fault).ToList();
        var before = proven.Coverage.Faults.Where(IsSeen).Select(f => f.Fault.ToString()).ToList();
        foreach (var stage in proven.Plan.Stages)
        {
            var shorter = whole.Without(stage.Number);
            var lost = before.Except(shorter.Coverage(shorter.Try([.. faults])).Faults.Where(IsSeen).Select(f => f.Fault.ToString()), StringComparer.Ordinal).ToList();
            var named = proven.Coverage.LostWithout(stage.Number).Select(f => f.ToString()).ToList();
            var differ = lost.Except(named, StringComparer.Ordinal).Concat(named.Except(lost, StringComparer.Ordinal)).ToList();
            run.Failed |= differ.Count > 0;
            text.Append(FormattableString.Invariant($"| {stage.Number} {stage.Title} | {named.Count} | {lost.Count} | {differ.Count}{Listed(differ)} |\n"));
        }

        text.Append('\n');

        static bool IsSeen(FaultSeen f) => f.SeenBy is SeenBy.One or SeenBy.Two;
    }

    private static string Listed(List<string> names) => names.Count == 0 ? "" : $" ({string.Join("; ", names)})";
}
