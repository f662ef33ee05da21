using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Bench;
using Loomwright.Records;

namespace Loomwright.Sessions;

/// <summary>What was checked along a plan, and what was not.</summary>
/// <param name="Session">By whom, with which meter, on which state of the design.</param>
/// <param name="Lines">Every expectation of the plan that was answered, in the plan's order; the last answer counts.</param>
/// <param name="NotChecked">Every step of the plan that expects something and was not answered.</param>
/// <param name="Happened">Hot, smoke or smell; changes at the loom; built: in the order they were given.</param>
public sealed record TestRecord(BenchSession Session, ImmutableArray<TestLine> Lines, ImmutableArray<Step> NotChecked, ImmutableArray<Entry> Happened)
{
    /// <summary>Every expectation that was answered before something got hot or was changed in its stage: it counts no longer.</summary>
    public ImmutableArray<TestLine> Void { get; init; } = [];

    /// <summary>Every reading at a step that was not answered: the step is not checked, what was read is not lost.</summary>
    public ImmutableArray<TestLine> ReadAlone { get; init; } = [];

    /// <summary>The stages of the plan it is held against.</summary>
    public ImmutableArray<Stage> Stages { get; init; } = [];

    /// <summary>Holds a session's entries against its plan. What was undone does not count; after a change, or hot, smoke or smell, the checks of its stage count from there on.</summary>
    public static TestRecord Of(BenchSession session, Plan plan, IReadOnlyList<Entry> entries)
    {
        var standing = NotUndone(entries);
        var lines = ImmutableArray.CreateBuilder<TestLine>();
        var open = ImmutableArray.CreateBuilder<Step>();
        var (gone, alone) = (ImmutableArray.CreateBuilder<TestLine>(), ImmutableArray.CreateBuilder<TestLine>());
        foreach (var stage in plan.Stages)
        {
            var ids = stage.Steps.Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
            var after = 0L;
            foreach (var since in standing.Where(e => e.Kind is EntryKind.Changed or EntryKind.Hot && ids.Contains(e.Step)))
            {
                gone.AddRange(stage.Steps.SelectMany(s => Answered(stage, s, Between(s, after, since.Number), Was(s, after, since.Number))).Select(l => l with { VoidSince = since }));
                after = since.Number;
            }

            foreach (var step in stage.Steps.Where(s => !s.Expect.IsEmpty))
            {
                var given = Between(step, after, long.MaxValue);
                if (!given.Exists(e => e.Kind == EntryKind.Seen))
                {
                    open.Add(step);
                    alone.AddRange(Answered(stage, step, given, Was(step, after, long.MaxValue)));
                    continue;
                }

                lines.AddRange(Answered(stage, step, given, Was(step, after, long.MaxValue)));
            }
        }

        return new(session, lines.ToImmutable(), open.ToImmutable(), [.. standing.Where(e => e.Kind is EntryKind.Hot or EntryKind.Changed or EntryKind.Built)]) { Void = gone.ToImmutable(), ReadAlone = alone.ToImmutable(), Stages = plan.Stages };

        List<Entry> Between(Step step, long after, long before) =>
            [.. standing.Where(e => e.Step == step.Id && e.Number > after && e.Number < before && e.Kind is EntryKind.Seen or EntryKind.Reading)];

        List<Entry> Was(Step step, long after, long before) =>
            [.. entries.Where(e => e.Step == step.Id && e.Number > after && e.Number < before && e is { Kind: EntryKind.Seen or EntryKind.Reading, Verdict: Verdict.Not })];
    }

    // A reading alone is a line too; what was only looked at takes the answer to the step.
    private static IEnumerable<TestLine> Answered(Stage stage, Step step, List<Entry> given, List<Entry> was)
    {
        var seen = given.LastOrDefault(e => e.Kind == EntryKind.Seen);
        return step.Expect
            .Select(expected => (Expected: expected, Answer: seen is null ? given.LastOrDefault(e => e.Kind == EntryKind.Reading && e.What == expected.What) : Of(expected, seen, given)))
            .Where(l => l.Answer is not null)
            .Select(l => new TestLine(stage, step, l.Expected, l.Answer!)
            {
                Earlier = [.. was.Where(e => e.Id != seen?.Id && e.Id != l.Answer!.Id && (e.Kind == EntryKind.Seen || e.What == l.Expected.What))],
            });
    }

    // Who told what is otherwise saw the rest as expected; a light of a box is told by its own name.
    private static Entry Of(Expectation expected, Entry seen, List<Entry> given)
    {
        if (given.LastOrDefault(e => e.Kind == EntryKind.Reading && e.What == expected.What) is { } own)
        {
            return own.Unit is null ? own with { Verdict = own.Raw == expected.Shows ? Verdict.AsExpected : Verdict.Not } : own;
        }

        var told = given.Where(e => e is { Kind: EntryKind.Reading, Unit: null }).ToList();
        return seen.Verdict == Verdict.Not && expected.Band is null && told.Count > 0 && !told.Exists(t => expected.What == $"lights on {t.What.Split('.')[0]}")
            ? seen with { Raw = Judging.Yes, Verdict = Verdict.AsExpected }
            : seen;
    }

    /// <summary>Of the newest session along each plan, or of the one named in place of it: the bench first.</summary>
    public static ImmutableArray<TestRecord> Newest(RecordFile records, string bike, Func<BenchSession, Plan> plan, string? named = null) =>
    [
        .. records.Sessions(bike).GroupBy(s => s.Plan).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => g.FirstOrDefault(s => s.Id == named) ?? g.First()).Select(s => Of(s, plan(s), records.Entries(s.Id))),
    ];

    /// <summary>Of a design's file: what is kept in its folder, or in the nearest one above that keeps anything of it. Empty when none does.</summary>
    /// <exception cref="RecordsException">The records cannot be read.</exception>
    public static ImmutableArray<TestRecord> Kept(string file) => Kept(file, (records, bike) => Newest(records, bike, s => KeptPlan.Of(s, records)));

    /// <summary>What the nearest folder keeps of a file, of those that keep any such thing.</summary>
    internal static ImmutableArray<T> Kept<T>(string file, Func<RecordFile, string, ImmutableArray<T>> of)
    {
        var whole = Path.GetFullPath(file);
        for (var folder = Path.GetDirectoryName(whole); folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (File.Exists(Path.Combine(folder, RecordFile.FileName)))
            {
                using var records = RecordFile.OpenToRead(folder);
                var kept = of(records, Path.GetRelativePath(folder, whole).Replace('\\', '/'));
                if (!kept.IsEmpty)
                {
                    return kept;
                }
            }
        }

        return [];
    }

    /// <summary>Along which plan, in words.</summary>
    public static string Where(BenchSession session) => session.Plan == BenchSession.OnTheBike ? "On the bike" : "On the bench";

    /// <summary>The plan's name: the first letters of what its steps are kept under.</summary>
    public static string Named(BenchSession session) => session.Steps is { } steps ? steps[..8] : "from before plans were kept";

    /// <summary>What may have been left empty.</summary>
    public static string Said(string text) => text.Length > 0 ? text : "not said";

    /// <summary>A time with its day and the offset of the place.</summary>
    public static string When(DateTimeOffset at) => at.ToString("d MMMM yyyy, HH:mm zzz", CultureInfo.InvariantCulture);

    /// <summary>Something that happened, in words; what lay in place of a part by its own name.</summary>
    public string Says(Entry happened) => happened.Kind switch
    {
        EntryKind.Hot when happened.Raw.Length > 0 => $"hot, smoke or smell: {Hot(Stages.FirstOrDefault(s => s.Steps.Any(x => x.Id == happened.Step)), happened)}",
        EntryKind.Hot => happened.What == Judging.Unknown ? "hot, smoke or smell, not known where" : "hot, smoke or smell",
        EntryKind.Changed when happened.Raw.Length > 0 => $"mended: {happened.Raw}",
        EntryKind.Changed => "something was changed at the loom",
        _ => "built as the file says",
    };

    /// <summary>What got hot, as the session calls it.</summary>
    internal static string Hot(Stage? stage, Entry hot) => hot.What == "part" && stage?.Lying(hot.Raw) is { } lying && lying != hot.Raw ? lying : $"the {hot.What} {hot.Raw}";

    /// <summary>What was not undone, in the order of keeping.</summary>
    internal static List<Entry> NotUndone(IReadOnlyList<Entry> entries)
    {
        var undone = entries.Where(e => e.Kind == EntryKind.Undo).Select(e => e.Of).ToHashSet(StringComparer.Ordinal);
        return [.. entries.Where(e => e.Kind != EntryKind.Undo && !undone.Contains(e.Id))];
    }
}
