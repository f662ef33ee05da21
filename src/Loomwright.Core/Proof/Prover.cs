using System.Collections.Concurrent;
using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Faults;

namespace Loomwright.Proof;

/// <summary>Puts every single fault into every stage of a plan.</summary>
internal sealed class Prover
{
    private readonly Plan _plan;
    private readonly bool _isWhole;
    private readonly ConcurrentDictionary<int, StageProof?> _after = new();

    /// <param name="plan">The plan.</param>
    /// <param name="isWhole">Whether everything is simulated to the end, no shortcut taken.</param>
    public Prover(Plan plan, bool isWhole = false)
        : this(plan, [.. plan.Stages.Select(s => new StageProof(s, plan.Whole!, isWhole))], isWhole)
    {
    }

    private Prover(Plan plan, ImmutableArray<StageProof> stages, bool isWhole) => (_plan, Stages, _isWhole) = (plan, stages, isWhole);

    public ImmutableArray<StageProof> Stages { get; }

    /// <summary>What each comes to, in their order, whatever the number of threads.</summary>
    public ImmutableArray<Evidence> Try(ImmutableArray<Fault> faults, Action<double>? done = null)
    {
        var all = new Evidence[faults.Length];
        var tried = 0;
        Parallel.For(0, faults.Length, f =>
        {
            all[f] = Try(faults[f]);
            done?.Invoke((double)Interlocked.Increment(ref tried) / faults.Length);
        });
        return [.. all];
    }

    /// <summary>Those that harm in some stage, in their order: those of <see cref="Harms"/>, found without looking what tells them.</summary>
    public ImmutableArray<Fault> Harmful(ImmutableArray<Fault> faults)
    {
        var harms = new bool[faults.Length];
        Parallel.For(0, faults.Length, f => harms[f] = DoesHarm(faults[f]));
        return [.. faults.Where((_, f) => harms[f])];
    }

    private bool DoesHarm(Fault fault)
    {
        int? before = null;
        foreach (var stage in Stages)
        {
            var harms = stage.Harms(fault, before is { } number && number == stage.Number - 1);
            if (harms is true)
            {
                return true;
            }

            before = harms is null ? before : stage.Number;
        }

        return false;
    }

    private Evidence Try(Fault fault)
    {
        var found = ImmutableArray.CreateBuilder<StageEvidence>();
        foreach (var stage in Stages)
        {
            if (stage.Of(fault, found.Count > 0 && found[^1].Stage == stage.Number - 1) is { } evidence)
            {
                found.Add(evidence);
            }
        }

        return new Evidence(fault, found.ToImmutable());
    }

    /// <summary>With more steps before power in one stage: only these need to be tried.</summary>
    public (Prover Prover, ImmutableArray<Evidence> Evidence) With(int place, Stage stage, ImmutableArray<Evidence> evidence)
    {
        var proof = Stages[place].WithOhms(stage);
        var known = _plan.Stages[place].Steps.Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        var order = stage.Steps.Select((s, i) => (s.Id, i)).ToDictionary(s => s.Id, s => s.i, StringComparer.Ordinal);
        var prover = new Prover(_plan with { Stages = _plan.Stages.SetItem(place, stage) }, Stages.SetItem(place, proof), _isWhole);
        return (prover, [.. evidence.AsParallel().AsOrdered().Select(e => e with { Stages = [.. e.Stages.Select(s => s.Stage == proof.Number ? More(s, e.Fault) : s)] })]);

        StageEvidence More(StageEvidence s, Fault fault) => proof.Ohmed.Catching(fault, id => !known.Contains(id)).ToList() is { Count: > 0 } more
            ? s with { Ohms = [.. s.Ohms.Concat(more).OrderByDescending(c => c.Margin).ThenBy(c => order[c.Step])] }
            : s;
    }

    /// <summary>The plan with one stage left out, and its once more in the next: all other stages stand as they are.</summary>
    public Prover Without(int number)
    {
        ImmutableArray<Stage> stages = [.. _plan.Stages.Where(s => s.Number != number).Select(s => s.Number == number + 1 ? WithoutAgain(s) : s)];
        return new Prover(
            _plan with { Stages = stages },
            [.. stages.Select(s => s.Number == number + 1 ? new StageProof(s, _plan.Whole!, _isWhole) : Stages.First(p => p.Number == s.Number))],
            _isWhole);
    }

    /// <summary>Those that harm, and what keeps each from it.</summary>
    public HarmList Harms(ImmutableArray<Evidence> evidence) =>
        new([.. evidence.Select(Harm).OfType<HarmfulFault>()], [.. Enum.GetValues<HarmKind>().Where(k => Stages.Any(s => s.CanShow(k)))]);

    /// <summary>Each in its class.</summary>
    public Coverage Coverage(ImmutableArray<Evidence> evidence) => new([.. evidence.Select(Seen)]);

    private FaultSeen Seen(Evidence evidence)
    {
        var observations = evidence.Observations.ToList();
        var stages = evidence.Stages.Where(s => s.Observed.Any()).Select(s => s.Stage).ToList();
        var seenBy = observations.Count switch
        {
            >= 2 => SeenBy.Two,
            1 => SeenBy.One,
            _ when evidence.Stages.IsEmpty => SeenBy.NotReached,
            _ => evidence.HasEffect ? SeenBy.NeedsAMeter : SeenBy.NoEffectNow,
        };
        return new FaultSeen(evidence.Fault, seenBy, [.. observations.Take(2).Select(o => o.Step)], seenBy == SeenBy.NotReached ? evidence.Fault.Subject : null)
        {
            Stages = [.. stages],
            LostWithout = stages is [var only] && !IsSeenAfter(only, evidence.Fault) ? only : null,
            WhyOnce = seenBy == SeenBy.One ? SeenOnce.Why(evidence.Fault) : null,
            ByLooking = evidence.Stages.Any(s => !s.Looks.IsEmpty),
        };
    }

    // With its stage left out a fault is new in the next one, which then does not do that stage's own once more.
    private bool IsSeenAfter(int number, Fault fault) => _after.GetOrAdd(number, After) is { } stage
        && stage.Of(fault, isOld: false) is { } next && next.Observed.Any();

    private StageProof? After(int number) => _plan.Stages.FirstOrDefault(s => s.Number == number + 1) is { } next ? new StageProof(WithoutAgain(next), _plan.Whole!, _isWhole) : null;

    private static Stage WithoutAgain(Stage stage) => stage with { Steps = stage.Steps.RemoveAll(s => s.Act == Act.Again) };

    private HarmfulFault? Harm(Evidence fault)
    {
        if (fault.Stages.FirstOrDefault(s => s.HarmAt is not null) is not { } first)
        {
            return null;
        }

        ImmutableArray<HarmKind> kinds = [.. fault.Stages.SelectMany(s => s.Harm).Distinct().Order()];
        var harmful = new HarmfulFault(fault.Fault, kinds, first.Stage, first.HarmAt!, Fate.Open, null, null, "");
        var before = fault.Stages.Where(s => s.Stage <= first.Stage).ToList();
        if (before.SelectMany(s => s.Ohms).MaxBy(o => o.Margin) is { } caught)
        {
            return harmful with { Fate = Fate.Caught, By = caught.Step, Margin = caught.Margin };
        }

        // The first stage that shows it, or harms although only the small fuse is in, decides.
        return before.FirstOrDefault(s => s.Shows is not null || s.SmallHarmAt is not null) is { IsLimited: true } shown
            ? harmful with { Fate = Fate.Limited, By = shown.ShowsAt }
            : harmful with { Precaution = Precautions.For(first.Harm, kinds) };
    }
}
