using System.Collections.Immutable;
using Loomwright.Dictionary;
using Loomwright.Faults;

namespace Loomwright.Diagnosis;

/// <summary>Something that may be wrong: nothing, one fault, or two at once.</summary>
/// <param name="Faults">What is wrong; of faults that come to the same circuit the likeliest first. Empty for nothing.</param>
/// <param name="Repairs">What sets it right: one work a fault.</param>
/// <param name="Prior">How likely before anything was answered, not divided by the sum.</param>
/// <param name="Looks">What there is to see after each stimulus of the table.</param>
public sealed record Hypothesis(ImmutableArray<ListedFault> Faults, ImmutableArray<string> Repairs, double Prior, ImmutableArray<Look> Looks)
{
    /// <summary>The repair of a loom with nothing wrong.</summary>
    public const string Nothing = "nothing to mend: a sign was misread";

    /// <summary>All repairs as one piece of work.</summary>
    public string Repair => string.Join(", and ", Repairs);

    /// <summary>Every entry of a table as a hypothesis; nothing wrong gets the share told.</summary>
    /// <param name="table">What faults look like.</param>
    /// <param name="nothing">How likely it is that nothing is wrong and a sign was misread, 0…1.</param>
    public static ImmutableArray<Hypothesis> Singles(FaultTable table, double nothing)
    {
        var faulty = table.Entries.Where(e => !e.IsHealthy).Sum(e => e.Prior);
        return [.. table.Entries.Select(e => e.IsHealthy
            ? new Hypothesis([], [Nothing], nothing, e.Looks)
            : Of(e, e.Prior / faulty * (1 - nothing)))];
    }

    private static Hypothesis Of(Entry entry, double prior)
    {
        var likeliest = entry.Faults.MaxBy(f => f.Prior())!;
        return new([likeliest, .. entry.Faults.Where(f => f != likeliest)], [likeliest.Repair], prior, entry.Looks);
    }
}
