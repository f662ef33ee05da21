using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Dictionary;
using Loomwright.Faults;

namespace Loomwright.Diagnosis;

/// <summary>Something that may be wrong: nothing, one fault, or two at once.</summary>
/// <param name="Faults">What is wrong; of faults that come to the same circuit the likeliest first. Empty for nothing.</param>
/// <param name="Repairs">What sets it right: one work a fault.</param>
/// <param name="Prior">How likely before anything was answered, not divided by the sum.</param>
/// <param name="Looks">What there is to see after each stimulus of the table.</param>
/// <param name="Traces">What a look at the thing itself finds.</param>
public sealed record Hypothesis(ImmutableArray<ListedFault> Faults, ImmutableArray<string> Repairs, double Prior, ImmutableArray<Look> Looks, ImmutableArray<Trace> Traces)
{
    /// <summary>The repair of a loom with nothing wrong.</summary>
    public const string Nothing = "nothing to mend: a sign was misread";

    /// <summary>All repairs as one piece of work.</summary>
    public string Repair { get; } = string.Join(", and ", Repairs);

    /// <summary>Whether it is about the battery itself, which then stands as the fault says.</summary>
    public bool IsOfTheBattery { get; } = Faults.Take(Repairs.Length).Any(f => f.Fault is Fault.Setting && f.Repair.StartsWith("charge ", StringComparison.Ordinal));

    /// <summary>Every entry of a table as a hypothesis, one for each work that may set it right; nothing wrong gets the share told and stands first.</summary>
    /// <param name="loom">The bike the table is of.</param>
    /// <param name="table">What faults look like.</param>
    /// <param name="nothing">How likely it is that nothing is wrong and a sign was misread, 0…1.</param>
    public static ImmutableArray<Hypothesis> Singles(Loom loom, FaultTable table, double nothing)
    {
        var traces = new Traces(loom);
        var faulty = table.Entries.Where(e => !e.IsHealthy).Sum(e => e.Prior);
        return [.. table.Entries.SelectMany(e => e.IsHealthy ? [new Hypothesis([], [Nothing], nothing, e.Looks, [])] : Of(e, traces, (1 - nothing) / faulty))];
    }

    private static IEnumerable<Hypothesis> Of(Entry entry, Traces traces, double scale) =>
        from work in entry.Faults.GroupBy(f => f.Repair, StringComparer.Ordinal)
        let faults = work.OrderByDescending(f => f.Prior()).ToImmutableArray()
        let prior = faults.Sum(f => f.Prior())
        select new Hypothesis(faults, [work.Key], prior * scale, entry.Looks, [.. faults.SelectMany(f => traces.Of(f).Select(t => t with { Chance = t.Chance * f.Prior() / prior }))
            .GroupBy(t => (t.Check, t.Found)).Select(g => new Trace(g.Key.Check, g.Key.Found, g.Sum(t => t.Chance)))]);
}
