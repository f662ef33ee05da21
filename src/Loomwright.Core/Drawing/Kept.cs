using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>An arrangement read back from where its boxes were kept: columns by their middles, above or below the spine by their heights.</summary>
internal sealed class Kept
{
    // Boxes of one column share a middle; one written by hand may be a little off.
    private const double SameColumn = 12;

    private Kept(int plates)
    {
        (Middle, Top, IsAbove) = (new double[plates], new double[plates], new bool[plates]);
    }

    /// <summary>By plate, on the sheet.</summary>
    public double[] Middle { get; }

    /// <summary>By plate, below the top of the spine.</summary>
    public double[] Top { get; }

    public bool[] IsAbove { get; }

    public double SpineHeight { get; private init; }

    public double[] ColumnMiddle { get; private set; } = [];

    /// <summary>Reads it back, sets the columns and sides of the plates, and lays their rows.</summary>
    public static (Kept Kept, Arrangement Arrangement) Of(Plates plates, Placing placing, Arranged arranged)
    {
        var kept = new Kept(plates.All.Length) { SpineHeight = arranged.SpineFoot - arranged.SpineTop };
        var boxes = placing.Boxes.ToDictionary(b => b.Part, b => b.From ?? (b.X, b.Y), Names.Comparer);
        foreach (var plate in plates.Standing)
        {
            var edge = boxes[plate.Part.Name];
            kept.Middle[plate.Index] = edge.X;
            kept.Top[plate.Index] = Standing.FirstRow(plate, edge.Y) - arranged.SpineTop;
            kept.IsAbove[plate.Index] = kept.Top[plate.Index] < kept.SpineHeight / 2;
        }

        kept.SetColumns(plates);
        return (kept, kept.Arrangement(plates));
    }

    private void SetColumns(Plates plates)
    {
        var columns = new List<List<Plate>>();
        foreach (var plate in plates.Standing.OrderBy(p => Middle[p.Index]).ThenBy(p => p.Index))
        {
            if (columns.Count == 0 || Middle[plate.Index] - Middle[columns[^1][^1].Index] > SameColumn)
            {
                columns.Add([]);
            }

            columns[^1].Add(plate);
            plate.Column = columns.Count - 1;
        }

        // The middle most of its boxes have.
        ColumnMiddle = [.. columns.Select(c => c.Select(p => Middle[p.Index]).Order().ElementAt(c.Count / 2))];
        Columns.Sides(plates, columns.Count);
        plates.Lay();
    }

    private Arrangement Arrangement(Plates plates)
    {
        var columns = plates.Standing.ToLookup(p => p.Column);
        List<Plate>[] Side(bool above) => [.. ColumnMiddle.Select((_, c) => columns[c].Where(p => IsAbove[p.Index] == above).OrderBy(p => above ? -Top[p.Index] : Top[p.Index]).ToList())];
        return new Arrangement { Above = Side(true), Below = Side(false), HalfRows = new int[plates.All.Length] };
    }
}
