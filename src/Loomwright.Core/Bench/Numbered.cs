using System.Collections.Immutable;

namespace Loomwright.Bench;

/// <summary>Steps with their ids counted anew, or those put between with ids that follow.</summary>
internal static class Numbered
{
    public static ImmutableArray<Step> Of(int stage, IReadOnlyList<Step> steps)
    {
        var counts = new Dictionary<Act, int>();
        return [.. steps.Select(s => s with { Id = Steps.Id(stage, s.Act, counts[s.Act] = counts.GetValueOrDefault(s.Act) + 1) })];
    }

    /// <summary>The ids of what was added to a stage's steps, each with the one that tells its place among them: <c>s0.measure.more-3</c>.</summary>
    public static IEnumerable<KeyValuePair<string, string>> More(Stage stage, Stage before)
    {
        var known = before.Steps.Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        return stage.Steps.Where(s => !known.Contains(s.Id)).Select((s, i) => KeyValuePair.Create(s.Id, FormattableString.Invariant($"{s.Id[..s.Id.LastIndexOf('.')]}.more-{i + 1}")));
    }

    /// <summary>Steps without an id get the next ones of their act; all others keep theirs, so that what was answered to them still stands.</summary>
    public static ImmutableArray<Step> Added(int stage, IReadOnlyList<Step> steps)
    {
        var counts = steps.Where(s => s.Id.Length > 0).CountBy(s => s.Act).ToDictionary();
        return [.. steps.Select(s => s.Id.Length > 0 ? s : s with { Id = Steps.Id(stage, s.Act, counts[s.Act] = counts.GetValueOrDefault(s.Act) + 1) })];
    }
}
