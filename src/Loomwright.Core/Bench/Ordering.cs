using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Which line comes when: always the one that brings least that is new. Ties by file order.</summary>
internal static class Ordering
{
    /// <summary>Loads that come on together by the same operations on the same output, of one kind, are shown together.</summary>
    public static ImmutableArray<Line> Together(ImmutableArray<Line> loads) =>
    [
        .. loads
            .GroupBy(l => (l.Name, Do: string.Join(", ", l.Do), l.Output, Kind: l.News[0]))
            .Select(g => Merged([.. g])),
    ];

    /// <summary>
    /// Greedy: fewest new kinds, then fewest operations, then fewest new wires. A function once begun is finished as long
    /// as each further load brings one new kind at most; its loads of known kinds come together. A box comes just before
    /// its first load, what cranks the engine last of all.
    /// </summary>
    public static ImmutableArray<Line> Of(ImmutableArray<Line> boxes, ImmutableArray<Line> loads)
    {
        var order = ImmutableArray.CreateBuilder<Line>();
        var left = loads.ToList();
        var known = new HashSet<string>(StringComparer.Ordinal);
        var connected = Reach.None;
        if (boxes.Length > 0)
        {
            Take(boxes[0]);
        }

        while (left.Count > 0)
        {
            var last = order.Count > 0 ? order[^1] : null;
            var next = left.MinBy(l => (l.Cranks, IsBoxNew(l), Unknown(l) - (IsSame(l, last) ? 1 : 0), !IsSame(l, last), l.Do.Length, l.Reach.Wires.Except(connected.Wires, Names.Comparer).Count()))!;
            if (IsBoxNew(next) && boxes.FirstOrDefault(b => b.Box == next.Box) is { } box)
            {
                Take(box);
            }

            var together = left.Where(l => l == next || (IsSame(l, next) && Unknown(l) == 0 && Unknown(next) == 0)).ToImmutableArray();
            left.RemoveAll(together.Contains);
            Take(Merged(together));
        }

        return order.ToImmutable();

        int Unknown(Line line) => line.News.Count(n => !known.Contains(n));

        bool IsBoxNew(Line line) => line.Box is not null && !connected.Parts.Contains(line.Box, Names.Comparer);

        void Take(Line line)
        {
            order.Add(line);
            known.UnionWith(line.News);
            connected = connected.With(line.Reach);
        }
    }

    private static bool IsSame(Line line, Line? other) =>
        other is not null && line.Name == other.Name && line.Output.Equals(other.Output) && line.Do.SequenceEqual(other.Do);

    private static Line Merged(ImmutableArray<Line> lines) => lines[0] with
    {
        Loads = [.. lines.SelectMany(l => l.Loads)],
        Also = [.. lines.SelectMany(l => l.Also).DistinctBy(w => string.Join(", ", w))],
        Ends = [.. lines.SelectMany(l => l.Ends).Distinct()],
        Reach = lines.Aggregate(Reach.None, (r, l) => r.With(l.Reach)),
        News = [.. lines.SelectMany(l => l.News).Distinct(StringComparer.Ordinal)],
    };
}
