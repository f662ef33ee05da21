using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>Draws what a layout found: places, wires with their labels, and the plates.</summary>
internal static class OverviewScene
{
    public static Scene Of(Loom loom, Plates plates, Arrangement at, Layout layout)
    {
        var sheet = Paper.For(layout.Width, layout.Height);
        var (x, y) = (Paper.Left + ((sheet.BodyWidth - layout.Width) / 2), Paper.Top + ((sheet.BodyHeight - layout.Height) / 2) - layout.Top);
        (x, y) = (2 * Math.Round(x / 2), 2 * Math.Round(y / 2));
        var paths = layout.Paths.Select(p => p.Select(s => new Spot(s.X + x, s.Y + y)).ToImmutableArray()).ToList();
        var draw = new PlateDrawing();
        foreach (var plate in plates.All)
        {
            draw.Plate(plate, layout.Middle(plate) + x, row => layout.Y(plate, row) + y);
        }

        var uprightness = new Runs(layout.Paths).Uprightness();
        var rooms = Rooms(loom, at, layout, x, y).ToImmutableArray();
        return new Scene
        {
            Id = "overview",
            Title = $"{loom.Name}: wiring overview",
            About = "left is the rear of the bike, right the front; every wire is a line but the returns, which name their ground",
            Width = sheet.Width,
            Height = sheet.Height,
            Paper = sheet.Name,
            Rooms = rooms,
            Cells = [.. draw.Cells],
            Pins = [.. draw.Pins],
            Lights = [.. draw.Lights],
            Signs = [.. draw.Signs],
            Strokes = [.. draw.Strokes],
            Dots = [.. draw.Dots],
            Strands = [.. plates.Lines.OrderBy(l => uprightness[l.Index]).Select(l => new Strand(l.Wire.Name, l.Wire.Colour, l.Wire.Size.SquareMillimetres, paths[l.Index]))],
            Letterings = [.. rooms.Select(r => new Lettering(r.Name, new Spot(r.Area.X + 6, r.Area.Y + 14), Hold.Start) { Bold = true, Quiet = true }), .. draw.Letterings, .. plates.Lines.SelectMany(l => new[] { Label(l, l.A, paths[l.Index][0]), Label(l, l.B, paths[l.Index][^1]) })],
            Unrouted = [.. plates.Unrouted],
        };
    }

    private static Lettering Label(Line line, End end, Spot at) =>
        new(line.Label, new Spot(at.X + (end.Right ? 4 : -4), at.Y - (Insulation.Body(line.Wire.Size.SquareMillimetres) / 2) - 1.6), end.Right ? Hold.Start : Hold.End) { Wire = line.Wire.Name };

    private static IEnumerable<Room> Rooms(Loom loom, Arrangement at, Layout layout, double x, double y)
    {
        for (var c = 0; c < at.Columns; c++)
        {
            foreach (var side in new[] { at.Above[c], at.Below[c] })
            {
                for (var (from, to) = (0, 0); from < side.Count; from = to)
                {
                    while (to < side.Count && side[to].Place == side[from].Place)
                    {
                        to++;
                    }

                    var run = side[from..to];
                    var top = run.Min(p => layout.Y(p, 0)) - 40;
                    var bottom = run.Max(p => layout.Y(p, p.Rows.Count - 1)) + 17;
                    var name = loom.Places.FirstOrDefault(p => Names.Same(p.Key, side[from].Place))?.Name ?? side[from].Place;
                    if (name.Length > 0)
                    {
                        yield return new Room(name, new Area(layout.ColumnLeft[c] + x, top + y, layout.ColumnWidth[c], bottom - top));
                    }
                }
            }
        }
    }
}
