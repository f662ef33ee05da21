using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Checks;
using Loomwright.Faults;

namespace Loomwright.Proof;

/// <summary>A plan with what it was found to catch, and the measurements that were added for what it did not.</summary>
/// <param name="Plan">The plan, these measurements in it.</param>
/// <param name="Harm">Every fault that does harm in some state of it.</param>
/// <param name="Coverage">What it sees of every single fault.</param>
public sealed record Proven(Plan Plan, HarmList Harm, Coverage Coverage)
{
    /// <summary>Faults as a builder would say them, <c>brake feed left off or broken</c>, with the owner's names at the marks.</summary>
    public ImmutableArray<string> Told(IEnumerable<Fault> faults)
    {
        var paths = Plan.Whole is { } whole ? new Paths(whole) : null;
        return [.. faults.Select(f => Finds.Told(f, at => new Mark(at, paths?.Terminal(at)?.Name)))];
    }

    /// <summary>A plan that no fault was tried on.</summary>
    public static Proven Not(Plan plan) => new(plan, new HarmList([], []), new Coverage([]));

    /// <summary>Every single fault that does harm in some state of a plan, as <see cref="Harm"/> lists them: far quicker than all that is found of them.</summary>
    public static ImmutableArray<Fault> Harmful(Plan plan) =>
        plan.Stages.IsEmpty || plan.Whole is null ? [] : new Prover(plan).Harmful(Catalogue.Of(plan.Whole));

    /// <summary>Proves a plan against every single fault the catalogue knows for what is on the bench.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="done">Told from several threads which share is worked out, roughly, 0 to 1.</param>
    public static Proven Of(Plan plan, Action<double>? done = null)
    {
        if (plan.Stages.IsEmpty || plan.Whole is null)
        {
            return Not(plan);
        }

        var proving = new Proving(plan, done ?? (_ => { }));
        proving.AddForHarm();
        proving.AddForSight();
        return proving.Finish();
    }
}
