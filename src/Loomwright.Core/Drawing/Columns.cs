using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>Which part stands in which column: by the place along the bike, rear left, front right.</summary>
internal static class Columns
{
    private const double Far = 1e9;
    private const double PlaceTorn = 9_000;
    private const double WireWithin = 2_500;
    private const double Row = 20;

    /// <summary>Sets the column of every plate so that the columns are about equally tall, places stay together, and wires go from column to column.</summary>
    public static void Assign(Loom loom, Plates plates, int columns)
    {
        var along = Along(loom);
        var middle = along.Values.DefaultIfEmpty(0).Max() / 2;
        var order = loom.Places.Select((p, i) => (p.Key, i)).ToDictionary(p => p.Key, p => p.i, Names.Comparer);
        var mixed = plates.All.Where(p => p.Form != Form.Plug).Select(p => p.Place).ToHashSet(StringComparer.Ordinal);
        var row = plates.All
            .OrderBy(p => Position(p))
            .ThenBy(p => order.GetValueOrDefault(p.Place, int.MaxValue))
            .ThenBy(p => p.Index)
            .ToArray();
        Split(row, plates, Math.Min(columns, row.Length));

        // A plug in a place of other parts stands on the side of the loom.
        double Position(Plate plate)
        {
            var at = along.GetValueOrDefault(plate.Place, middle);
            return plate.Form == Form.Plug && mixed.Contains(plate.Place) ? at + (at < middle ? 0.01 : -0.01) : at;
        }
    }

    /// <summary>As <see cref="Assign"/> for the parts of one place, between a column of flags toward the rear and one toward the front.</summary>
    public static void AssignBetween(Plates plates, Func<Plate, bool> isRear, int columns)
    {
        var row = plates.All.Where(p => p.Form != Form.Flag).ToArray();
        Split(row, plates, Math.Min(columns, row.Length));
        foreach (var plate in plates.All)
        {
            plate.Column = plate.Form != Form.Flag ? plate.Column + 1 : isRear(plate) ? 0 : columns + 1;
        }
    }

    /// <summary>The side every end leaves to: toward its partner's column; opposite sides for what lies in a wire.</summary>
    public static void Sides(Plates plates, int columns)
    {
        foreach (var line in plates.Lines)
        {
            var (a, b) = (line.A.Plate.Column, line.B.Plate.Column);
            var inward = (a * 2) + 1 < columns;
            line.A.Right = a == b ? inward : b > a;
            line.B.Right = a == b ? inward : a > b;
        }

        foreach (var plate in plates.All.Where(p => p.Form is Form.Plug or Form.Through))
        {
            var (first, second) = (Votes(plate, ofFirst: true), Votes(plate, ofFirst: false));
            plate.OneSided = plate.Form == Form.Through && first * second > 0;
            plate.FirstRight = first > second;
            plate.Ends.ForEach(e => e.Right = plate.OneSided ? first > 0 : IsFirst(e) == plate.FirstRight);
        }

        foreach (var line in plates.Lines.Where(l => l.A.Plate.Column == l.B.Plate.Column))
        {
            var (fixedA, fixedB) = (line.A.Plate.Form is Form.Plug or Form.Through, line.B.Plate.Form is Form.Plug or Form.Through);
            line.B.Right = fixedA && !fixedB ? line.A.Right : line.B.Right;
            line.A.Right = fixedB && !fixedA ? line.B.Right : line.A.Right;
        }

        int Votes(Plate plate, bool ofFirst) => Math.Sign(plates.Lines
            .SelectMany(l => new[] { (Own: l.A, Other: l.B), (Own: l.B, Other: l.A) })
            .Where(e => e.Own.Plate == plate && IsFirst(e.Own) == ofFirst)
            .Sum(e => Math.Sign(e.Other.Plate.Column - plate.Column)));
    }

    private static bool IsFirst(End end) => end.Plate.Form == Form.Plug
        ? end.Mark.EndsWith('a')
        : Names.Same(end.Mark, end.Plate.Model.Terminals[0].Mark);

    /// <summary>How far each place lies along the longest way through the distances; a place beside it gets its foot on it.</summary>
    public static Dictionary<string, double> Along(Loom loom)
    {
        var keys = loom.Places.Select(p => p.Key).ToList();
        var way = new double[keys.Count, keys.Count];
        for (var a = 0; a < keys.Count; a++)
        {
            for (var b = 0; b < keys.Count; b++)
            {
                way[a, b] = a == b ? 0 : loom.Distances.Where(d => Joins(d, keys[a], keys[b])).Select(d => d.Length.Metres).DefaultIfEmpty(Far).Min();
            }
        }

        for (var over = 0; over < keys.Count; over++)
        {
            for (var a = 0; a < keys.Count; a++)
            {
                for (var b = 0; b < keys.Count; b++)
                {
                    way[a, b] = Math.Min(way[a, b], way[a, over] + way[over, b]);
                }
            }
        }

        var (rear, front, longest) = (0, 0, 0.0);
        for (var a = 0; a < keys.Count; a++)
        {
            for (var b = a + 1; b < keys.Count; b++)
            {
                (rear, front, longest) = way[a, b] < Far / 2 && way[a, b] > longest ? (a, b, way[a, b]) : (rear, front, longest);
            }
        }

        if (keys.Count > 0 && loom.Places[rear].MovesWith == "steering" && loom.Places[front].MovesWith != "steering")
        {
            (rear, front) = (front, rear);
        }

        return keys.Select((k, i) => (k, i)).ToDictionary(
            k => k.k,
            k => way[rear, k.i] < Far / 2 ? Math.Round((way[rear, k.i] + longest - way[k.i, front]) / 2, 6) : longest / 2,
            Names.Comparer);
    }

    private static bool Joins(Distance d, string a, string b) =>
        (Names.Same(d.A, a) && Names.Same(d.B, b)) || (Names.Same(d.A, b) && Names.Same(d.B, a));

    // The cheapest cut of the row into columns, by columns from the left.
    private static void Split(Plate[] row, Plates plates, int columns)
    {
        var height = row.Select(p => (Math.Max(1, p.Form == Form.Plug ? p.Model.Terminals.Length / 2 : p.Form is Form.Short or Form.Through ? 1 : p.Model.Terminals.Length) + 2) * Row).ToArray();
        var ideal = height.Sum() / columns;
        var at = row.Select((p, i) => (p, i)).ToDictionary(p => p.p, p => p.i);
        var within = new int[row.Length, row.Length + 1];
        foreach (var line in plates.Lines.Where(l => at.ContainsKey(l.A.Plate) && at.ContainsKey(l.B.Plate)))
        {
            var (low, high) = (Math.Min(at[line.A.Plate], at[line.B.Plate]), Math.Max(at[line.A.Plate], at[line.B.Plate]));
            for (var from = 0; from <= low; from++)
            {
                for (var to = high + 1; to <= row.Length; to++)
                {
                    within[from, to] += low == high ? 0 : 1;
                }
            }
        }

        var best = new double[columns + 1, row.Length + 1];
        var cut = new int[columns + 1, row.Length + 1];
        for (var c = 0; c <= columns; c++)
        {
            for (var to = 0; to <= row.Length; to++)
            {
                best[c, to] = c == 0 && to == 0 ? 0 : double.MaxValue;
                for (var (from, tall) = (to - 1, 0.0); c > 0 && from >= c - 1; from--)
                {
                    tall += height[from];
                    var torn = to < row.Length && row[to - 1].Place == row[to].Place && row[to - 1].Form != Form.Plug && row[to].Form != Form.Plug ? PlaceTorn : 0;
                    var price = best[c - 1, from] == double.MaxValue ? double.MaxValue
                        : best[c - 1, from] + ((tall - ideal) * (tall - ideal)) + (WireWithin * within[from, to]) + torn;
                    (best[c, to], cut[c, to]) = price < best[c, to] ? (price, from) : (best[c, to], cut[c, to]);
                }
            }
        }

        for (var (c, to) = (columns, row.Length); c > 0; to = cut[c, to], c--)
        {
            foreach (var plate in row[cut[c, to]..to])
            {
                plate.Column = c - 1;
            }
        }
    }
}
