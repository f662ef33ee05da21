using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Faults;

namespace Loomwright.Proof;

/// <summary>Puts every single fault into every stage of a plan.</summary>
internal sealed class Prover
{
    private readonly Plan _plan;

    public Prover(Plan plan)
        : this(plan, [.. plan.Stages.Select((s, i) => new StageProof(i, s, plan.Whole!))])
    {
    }

    private Prover(Plan plan, ImmutableArray<StageProof> stages) => (_plan, Stages) = (plan, stages);

    public ImmutableArray<StageProof> Stages { get; }

    /// <summary>What each comes to, in their order, whatever the number of threads.</summary>
    public ImmutableArray<Evidence> Try(ImmutableArray<Fault> faults)
    {
        var all = new Evidence[faults.Length];
        Parallel.For(0, faults.Length, f => all[f] = Try(faults[f]));
        return [.. all];
    }

    private Evidence Try(Fault fault)
    {
        var found = ImmutableArray.CreateBuilder<StageEvidence>();
        for (var s = 0; s < Stages.Length; s++)
        {
            if (Stages[s].Of(fault, found.Count > 0 && found[^1].Stage == s - 1) is { } evidence)
            {
                found.Add(evidence);
            }
        }

        return new Evidence(fault, found.ToImmutable());
    }

    /// <summary>With more steps before power in one stage: nothing else needs to be tried again.</summary>
    public (Prover Prover, ImmutableArray<Evidence> Evidence) With(int place, Stage stage, ImmutableArray<Evidence> evidence)
    {
        var proof = Stages[place].WithOhms(stage);
        var prover = new Prover(_plan with { Stages = _plan.Stages.SetItem(place, stage) }, Stages.SetItem(place, proof));
        return (prover, [.. evidence.Select(e => e with { Stages = [.. e.Stages.Select(s => s.Stage == place ? s with { Ohms = proof.Caught(e.Fault) } : s)] })]);
    }

    /// <summary>Those that harm, and what keeps each from it.</summary>
    public HarmList Harms(ImmutableArray<Evidence> evidence) =>
        new([.. evidence.Select(Harm).OfType<HarmfulFault>()], [.. Enum.GetValues<HarmKind>().Where(k => Stages.Any(s => s.CanShow(k)))]);

    /// <summary>Each in its class.</summary>
    public Coverage Coverage(ImmutableArray<Evidence> evidence) => new([.. evidence.Select(Seen)]);

    private FaultSeen Seen(Evidence evidence)
    {
        var observations = evidence.Stages.SelectMany(s => s.Observed).DistinctBy(o => o.What).ToList();
        var seenBy = observations.Count switch
        {
            >= 2 => SeenBy.Two,
            1 => SeenBy.One,
            _ when evidence.Stages.IsEmpty => SeenBy.NotReached,
            _ => evidence.HasEffect ? SeenBy.NeedsAMeter : SeenBy.NoEffectNow,
        };
        return new FaultSeen(evidence.Fault, seenBy, [.. observations.Take(2).Select(o => o.Step)], seenBy == SeenBy.NotReached ? evidence.Fault.Subject : null)
        {
            Stages = [.. evidence.Stages.Where(s => s.Observed.Any()).Select(s => _plan.Stages[s.Stage].Number)],
            ByLooking = evidence.Stages.Any(s => !s.Looks.IsEmpty),
        };
    }

    private HarmfulFault? Harm(Evidence fault)
    {
        if (fault.Stages.FirstOrDefault(s => s.HarmAt is not null) is not { } first)
        {
            return null;
        }

        ImmutableArray<HarmKind> kinds = [.. fault.Stages.SelectMany(s => s.Harm).Distinct().Order()];
        var harmful = new HarmfulFault(fault.Fault, kinds, _plan.Stages[first.Stage].Number, first.HarmAt!, Standing.Open, null, null, "");
        var before = fault.Stages.Where(s => s.Stage <= first.Stage).ToList();
        if (before.SelectMany(s => s.Ohms).MaxBy(o => o.Margin) is { } caught)
        {
            return harmful with { Standing = Standing.Caught, By = caught.Step, Margin = caught.Margin };
        }

        // The first stage that shows it, or harms although only the small fuse is in, decides.
        return before.FirstOrDefault(s => s.Shows is not null || s.SmallHarmAt is not null) is { IsLimited: true } shown
            ? harmful with { Standing = Standing.Limited, By = shown.ShowsAt }
            : harmful with { Precaution = Precautions.For(kinds[0]) };
    }
}
