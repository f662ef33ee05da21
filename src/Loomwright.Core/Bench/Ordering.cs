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
            .Select(g => g.First() with
            {
                Loads = [.. g.SelectMany(l => l.Loads)],
                Reach = g.Aggregate(Reach.None, (r, l) => r.With(l.Reach)),
                News = [.. g.SelectMany(l => l.News).Distinct(StringComparer.Ordinal)],
            }),
    ];

    /// <summary>Greedy: fewest new kinds, then fewest operations, then fewest new wires. A box comes just before its first load.</summary>
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
            var next = left.MinBy(l => (IsBoxNew(l), l.News.Count(n => !known.Contains(n)), l.Do.Length, l.Reach.Wires.Except(connected.Wires, Names.Comparer).Count()))!;
            if (IsBoxNew(next) && boxes.FirstOrDefault(b => b.Box == next.Box) is { } box)
            {
                Take(box);
            }

            Take(next);
            left.Remove(next);
        }

        return order.ToImmutable();

        bool IsBoxNew(Line line) => line.Box is not null && !connected.Parts.Contains(line.Box, Names.Comparer);

        void Take(Line line)
        {
            order.Add(line);
            known.UnionWith(line.News);
            connected = connected.With(line.Reach);
        }
    }
}
