using System.Collections.Immutable;

namespace Loomwright.Bench;

/// <summary>Steps with their ids counted anew, after some were put between.</summary>
internal static class Numbered
{
    public static ImmutableArray<Step> Of(int stage, IReadOnlyList<Step> steps)
    {
        var counts = new Dictionary<Act, int>();
        return [.. steps.Select(s => s with { Id = Steps.Id(stage, s.Act, counts[s.Act] = counts.GetValueOrDefault(s.Act) + 1) })];
    }
}
