using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>At which row, and on which side, a wire that is laid by itself meets a plate.</summary>
internal static class Attach
{
    /// <summary>A row of a plate and a side of it.</summary>
    internal readonly record struct At(int Row, bool Right);

    /// <summary>Gives up the places of both ends.</summary>
    public static void Leave(Line line)
    {
        foreach (var end in new[] { line.A, line.B })
        {
            end.Row = -1;
        }
    }

    public static void Take(Line line, At a, At b)
    {
        Take(line.A, a);
        Take(line.B, b);
    }

    private static void Take(End end, At at)
    {
        (end.Row, end.Right) = (at.Row, at.Right);
        if (at.Row == end.Plate.Rows.Count)
        {
            end.Plate.Rows.Add(new PlateRow("", ""));
            end.Plate.Pins[0] = end.Plate.Pins[0] with { Last = at.Row };
            end.Plate.Bars.Clear();
            end.Plate.Bars.Add((1, at.Row));
        }
    }

    /// <summary>Free places for both ends, the nearest pair first.</summary>
    public static IEnumerable<(At A, At B)> Choices(Standing standing, Line line) =>
        from pair in
            from a in Free(standing, line.A)
            from b in Free(standing, line.B)
            where line.A.Plate != line.B.Plate || a != b
            select (A: a, B: b)
        orderby Way(standing, line, pair.A, pair.B)
        select pair;

    private static double Way(Standing standing, Line line, At a, At b)
    {
        var (from, to) = (standing.Edge(line.A.Plate, a.Row, a.Right), standing.Edge(line.B.Plate, b.Row, b.Right));

        // A side turned away from the other end costs a way round the box.
        var round = (from.X < to.X != a.Right ? line.A.Plate.Width + 60 : 0) + (to.X < from.X != b.Right ? line.B.Plate.Width + 60 : 0);
        return Math.Abs(from.X - to.X) + Math.Abs(from.Y - to.Y) + round;
    }

    private static List<At> Free(Standing standing, End end)
    {
        var plate = end.Plate;
        var taken = plate.Ends.Concat(plate.LaterEnds).Where(e => e != end && e.Row >= 0).Select(e => new At(e.Row, e.Right)).ToHashSet();
        var free = plate.Pins
            .Where(p => Names.Same(p.Mark, end.Mark))
            .SelectMany(p => Enumerable.Range(p.First, p.Last - p.First + 1).SelectMany(r => new[] { new At(r, true), new At(r, false) }.Where(at => p.Right is null || p.Right == at.Right)))
            .Where(at => !taken.Contains(at))
            .ToList();
        if (free.Count == 0 && plate.Form == Form.Joint && HasRoomBelow(standing, plate))
        {
            return [new At(plate.Rows.Count, true), new At(plate.Rows.Count, false)];
        }

        return free;
    }

    // A point may grow by one row where nothing lies below it.
    private static bool HasRoomBelow(Standing standing, Plate plate)
    {
        var box = standing.Box(plate);
        var below = new Area(box.X, box.Bottom, box.Width, Layout.Row + 6);
        return !standing.Plates.All.Any(p => p != plate && standing.Footprint(p).Meets(below)) && new Runs([.. standing.Paths.Where(p => p.Length > 0)]).Through(below, _ => true) == 0;
    }
}
