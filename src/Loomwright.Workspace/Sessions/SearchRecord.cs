using System.Collections.Immutable;
using Loomwright.Quantities;
using Loomwright.Records;

namespace Loomwright.Sessions;

/// <summary>What was told in a search for a cause.</summary>
/// <param name="Search">On which state of the design, and when it began.</param>
/// <param name="Answers">Every answer that was not taken back, in the order given.</param>
public sealed record SearchRecord(BenchSession Search, ImmutableArray<Entry> Answers)
{
    /// <summary>Of a bike, the newest first; those nothing was told in are left out.</summary>
    /// <exception cref="RecordsException">They cannot be read.</exception>
    public static ImmutableArray<SearchRecord> Of(RecordFile records, string bike) =>
        [.. records.Searches(bike).Select(s => new SearchRecord(s, [.. TestRecord.NotUndone(records.Entries(s.Id)).Where(e => e.Kind == EntryKind.Asked)])).Where(s => !s.Answers.IsEmpty)];

    /// <summary>Of a design's file: what is kept in its folder, or in the nearest one above that keeps anything of it.</summary>
    /// <exception cref="RecordsException">The records cannot be read.</exception>
    public static ImmutableArray<SearchRecord> Kept(string file) => TestRecord.Kept(file, Of);

    /// <summary>The step of a session it began at; null for one that began with a symptom.</summary>
    public string? Step => Search.Id.Split(Guide.Separator) is [_, var step, _] ? step : null;

    /// <summary>An answer in words: what was done, what was asked and told; of volts also where they are when nothing is wrong.</summary>
    public static string Says(Entry answer)
    {
        var told = answer.What.Length > 0 ? answer.What : AskedLine.Words(answer.Raw);
        return answer is { Least: { } least, Most: { } most }
            ? $"{told}, {(answer.Verdict == Verdict.AsExpected ? "inside" : "outside")} {new Voltage(least)} to {new Voltage(most)}"
            : told;
    }
}
