using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Checks;
using Loomwright.Faults;

namespace Loomwright.Proof;

/// <summary>Tries every fault on a plan, and adds measurements before power for those that too few steps tell.</summary>
internal sealed class Proving
{
    // Of the whole work, judgement.
    private const double ShareOfTrying = 0.5;

    private readonly Action<double> _done;
    private readonly Plan _plan;
    private readonly Paths _paths;
    private ImmutableArray<Stage> _stages;
    private Prover _prover;
    private ImmutableArray<Evidence> _evidence;

    public Proving(Plan plan, Action<double> done)
    {
        (_plan, _stages, _paths, _done) = (plan, plan.Stages, new Paths(plan.Whole!), done);
        _prover = new Prover(plan);
        _evidence = _prover.Try(Catalogue.Of(plan.Whole!), share => done(ShareOfTrying * share));
    }

    /// <summary>For faults that do harm and would stay open: in every stage up to the one where they harm.</summary>
    public void AddForHarm()
    {
        var open = Open().ToList();
        for (var s = 0; s < _stages.Length && open.Count > 0; s++)
        {
            if (Add(s, [.. open.Where(o => o.Stage >= _stages[s].Number).Select(o => o.Fault)], isHarm: true))
            {
                open = [.. Open()];
            }
        }
    }

    /// <summary>For faults that nothing tells yet, then for those that one observation tells: in the stage that first connects them.</summary>
    public void AddForSight()
    {
        for (var s = 0; s < _stages.Length; s++)
        {
            foreach (var most in new[] { 0, 1 })
            {
                _done(ShareOfTrying + ((1 - ShareOfTrying) * s / _stages.Length));
                Add(s, [.. _evidence.Where(e => e.Stages is [var first, ..] && first.Stage == s && e.Observations.Count() == most).Select(e => e.Fault)], isHarm: false);
            }
        }
    }

    public Proven Finish()
    {
        var (harm, coverage) = (_prover.Harms(_evidence), _prover.Coverage(_evidence));
        ImmutableArray<Stage> stages = [.. _stages.Select(s => FusesOut.In(Precautions.In(s, harm)))];
        var ids = stages.Zip(_plan.Stages).SelectMany(s => Numbered.More(s.First, s.Second)).ToDictionary(StringComparer.Ordinal);
        return new Proven(
            _plan with { Stages = [.. stages.Select(s => s with { Steps = [.. s.Steps.Select(x => x with { Id = Id(x.Id) })] })] },
            harm with { Faults = [.. harm.Faults.Select(f => f with { Step = Id(f.Step), By = f.By is null ? null : Id(f.By) })] },
            new Coverage([.. coverage.Faults.Select(f => f with { By = [.. f.By.Select(Id)] })]));

        string Id(string id) => ids.GetValueOrDefault(id, id);
    }

    private IEnumerable<HarmfulFault> Open() => _prover.Harms(_evidence).Faults.Where(f => f.Fate == Fate.Open);

    private bool Add(int place, IReadOnlyCollection<Fault> faults, bool isHarm)
    {
        var more = faults.Count == 0 ? _stages[place] : new MoreOhms(_prover.Stages[place], _stages[place], _paths).For(faults, isHarm);
        if (more == _stages[place])
        {
            return false;
        }

        _stages = _stages.SetItem(place, more);
        (_prover, _evidence) = _prover.With(place, more, _evidence);
        return true;
    }
}
