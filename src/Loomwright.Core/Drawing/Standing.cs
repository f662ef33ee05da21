using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>The overview while it is put together: where every plate stands on the sheet, and the path and labels of every line.</summary>
internal sealed class Standing
{
    /// <summary>Half the width of the rectangle around a point, and how far the outline of a box stands off its rows.</summary>
    public const double PointHalf = 16;
    public const double Frame = 4;

    private readonly double[] _middle;
    private readonly double[] _top;

    public Standing(Plates plates, Paper paper)
    {
        (Plates, Paper) = (plates, paper);
        (_middle, _top) = (new double[plates.All.Length], new double[plates.All.Length]);
        Lines = [.. plates.Lines, .. plates.Later];
        Paths = [.. Lines.Select(_ => Array.Empty<Spot>())];
        Labels = [.. Lines.Select(_ => ImmutableArray<Lettering>.Empty)];
    }

    public Plates Plates { get; }

    public Paper Paper { get; set; }

    public Line[] Lines { get; }

    /// <summary>By line; empty where there is none.</summary>
    public Spot[][] Paths { get; }

    public ImmutableArray<Lettering>[] Labels { get; }

    /// <summary>The heights of the band of lanes.</summary>
    public Area Spine { get; private init; }

    public List<Room> Rooms { get; } = [];

    /// <summary>Wires that are shown as a pair of flags.</summary>
    public List<string> Flags { get; } = [];

    public double Middle(Plate plate) => _middle[plate.Index];

    public double Y(Plate plate, int row) => _top[plate.Index] + (row * Layout.Row) + (Layout.Row / 2);

    public Spot Edge(Plate plate, int row, bool right) => new(_middle[plate.Index] + ((right ? 1 : -1) * plate.Width / 2), Y(plate, row));

    public void Stand(Plate plate, double middle, double top) => (_middle[plate.Index], _top[plate.Index]) = (middle, top);

    /// <summary>The rectangle of a plate, as told to the outside.</summary>
    public Area Box(Plate plate)
    {
        var (half, first, frame) = plate.Form switch
        {
            Form.Joint => (PointHalf, 1, 0.0),
            Form.Plug => (plate.Width / 2, 1, 0.0),
            _ => (plate.Width / 2, 0, Frame),
        };
        var top = _top[plate.Index] + (first * Layout.Row) - frame;
        return new Area(_middle[plate.Index] - half, top, half * 2, ((plate.Rows.Count - first) * Layout.Row) + (2 * frame));
    }

    /// <summary>All a plate covers, a name above it included.</summary>
    public Area Footprint(Plate plate)
    {
        var box = Box(plate);
        var half = Math.Max(box.Width, plate.Footprint) / 2;
        var top = Math.Min(box.Y, _top[plate.Index]);
        return new Area(_middle[plate.Index] - half, top, half * 2, box.Bottom - top);
    }

    /// <summary>The top of the first row of a plate whose rectangle has that upper edge.</summary>
    public static double FirstRow(Plate plate, double top) => plate.Form is Form.Joint or Form.Plug ? top - Layout.Row : top + Frame;

    /// <summary>Stands a plate by the middle of its upper edge.</summary>
    public void StandAt(Plate plate, double middle, double top) => Stand(plate, middle, FirstRow(plate, top));

    /// <summary>Gives a line its path, with a label above the stub at each end.</summary>
    public void Lay(Line line, Spot[] path)
    {
        Paths[line.Index] = path;
        Labels[line.Index] = path.Length == 0 ? [] : [Label(line, path[0], path[1]), Label(line, path[^1], path[^2])];
    }

    /// <summary>Above a stub that leaves an edge.</summary>
    public static Lettering Label(Line line, Spot edge, Spot next)
    {
        var right = next.X > edge.X;
        return new(line.Label, new Spot(edge.X + (right ? 4 : -4), edge.Y - (Insulation.Body(line.Wire.Size.SquareMillimetres) / 2) - 1.6), right ? Hold.Start : Hold.End) { Wire = line.Wire.Name };
    }

    /// <summary>Takes what a layout found, moved to the sheet by so much.</summary>
    public static Standing Of(Loom loom, Arrangement at, Layout layout, Plates plates, Paper paper, Spot move)
    {
        var standing = new Standing(plates, paper) { Spine = new Area(0, move.Y, 0, layout.SpineHeight) };
        foreach (var plate in plates.Standing)
        {
            standing.Stand(plate, layout.Middle(plate) + move.X, layout.Y(plate, 0) - (Layout.Row / 2) + move.Y);
        }

        foreach (var line in plates.Lines)
        {
            standing.Lay(line, [.. layout.Paths[line.Index].Select(s => new Spot(s.X + move.X, s.Y + move.Y))]);
        }

        for (var c = 0; c < at.Columns; c++)
        {
            standing.Rooms.AddRange(new[] { at.Above[c], at.Below[c] }.SelectMany(side => standing.RoomsOf(loom, side, layout.ColumnLeft[c] + move.X, layout.ColumnWidth[c])));
        }

        return standing;
    }

    private IEnumerable<Room> RoomsOf(Loom loom, List<Plate> side, double left, double width)
    {
        for (var (from, to) = (0, 0); from < side.Count; from = to)
        {
            while (to < side.Count && side[to].Place == side[from].Place)
            {
                to++;
            }

            var run = side[from..to];
            var top = run.Min(p => Y(p, 0)) - 40;
            var bottom = run.Max(p => Y(p, p.Rows.Count - 1)) + 17;
            var name = loom.Places.FirstOrDefault(p => Names.Same(p.Key, side[from].Place))?.Name ?? side[from].Place;
            if (name.Length > 0)
            {
                yield return new Room(name, new Area(left, top, width, bottom - top));
            }
        }
    }
}
