using System.Globalization;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>
/// Lays single wires among others that stay: those of boxes that were moved, those a moved box now covers, and those that came
/// after the sheet was arranged. What finds no way gets a pair of flags.
/// </summary>
internal static class LaidAgain
{
    private const double Stub = 10;
    private const double OffBox = 6;

    // The room one asks for beside another wire, and what is taken if there is none.
    private static readonly double[] Clearances = [8, 6];

    /// <summary>All that the design asks for beside what a layout found.</summary>
    public static void Lay(Standing standing, Placing placing)
    {
        var plates = standing.Plates.All.ToDictionary(p => p.Part.Name, Names.Comparer);
        foreach (var box in placing.Boxes.Where(b => (placing.Arranged is null || b.From is not null) && plates.TryGetValue(b.Part, out var p) && !p.IsLate))
        {
            Move(standing, plates[box.Part], box);
        }

        var given = placing.Boxes.ToDictionary(b => b.Part, Names.Comparer);
        foreach (var late in standing.Plates.All.Where(p => p.IsLate).OrderBy(p => given.ContainsKey(p.Part.Name) ? 0 : 1))
        {
            if (given.TryGetValue(late.Part.Name, out var box))
            {
                Move(standing, late, box);
            }
            else
            {
                FreePlace.Stand(standing, late);
            }
        }

        Route(standing, [.. standing.Plates.Lines.Where(l => standing.Paths[l.Index].Length == 0), .. standing.Plates.Later]);
        Widen(standing);
    }

    private static void Move(Standing standing, Plate plate, Placed to)
    {
        standing.StandAt(plate, to.X, to.Y);
        var footprint = standing.Footprint(plate).Inside(-OffBox);
        var again = new List<Line>();
        foreach (var line in standing.Plates.Lines.Where(l => standing.Paths[l.Index].Length > 0))
        {
            var covered = new Runs([standing.Paths[line.Index]]).Through(footprint, _ => true) > 0 || standing.Labels[line.Index].Any(l => l.Area.Meets(footprint));
            if (line.A.Plate == plate || line.B.Plate == plate || covered)
            {
                again.Add(line);
                standing.Lay(line, []);
            }
        }

        Route(standing, again);
    }

    private static void Route(Standing standing, IReadOnlyList<Line> lines)
    {
        foreach (var line in lines)
        {
            Attach.Leave(line);
        }

        foreach (var line in lines)
        {
            if (!TryRoute(standing, line))
            {
                Flag(standing, line);
            }
        }
    }

    private static bool TryRoute(Standing standing, Line line)
    {
        foreach (var clearance in Clearances)
        {
            foreach (var (a, b) in Attach.Choices(standing, line))
            {
                var (edgeA, edgeB) = (standing.Edge(line.A.Plate, a.Row, a.Right), standing.Edge(line.B.Plate, b.Row, b.Right));
                var (from, to) = (Off(edgeA, a.Right), Off(edgeB, b.Right));
                if (Router.Way(GridOf(standing, [from, to], clearance), from, a.Right ? 0 : 2, to, b.Right ? 2 : 0) is { } way)
                {
                    Attach.Take(line, a, b);
                    Labelled(standing, line, Straightened([edgeA, .. way, edgeB]));
                    return true;
                }
            }
        }

        return false;

        static Spot Off(Spot edge, bool right) => edge with { X = edge.X + (right ? Stub : -Stub) };
    }

    private static Grid GridOf(Standing standing, IReadOnlyList<Spot> own, double clearance)
    {
        var body = new Area(Paper.Left, Paper.Top - 8, Math.Max(standing.Paper.BodyWidth, Reach(standing).X - Paper.Left), Math.Max(standing.Paper.BodyHeight, Reach(standing).Y - Paper.Top));
        return new Grid(body, standing.Plates.All.Select(standing.Footprint), Texts(standing).Select(t => t.Area), [.. standing.Paths.Where(p => p.Length > 0)], own, clearance);
    }

    private static IEnumerable<Lettering> Texts(Standing standing) =>
        standing.Labels.SelectMany(l => l).Concat(standing.Rooms.Select(r => r.Lettering));

    // At both ends where that is free, else above a level run of the wire.
    private static void Labelled(Standing standing, Line line, Spot[] path)
    {
        standing.Paths[line.Index] = path;
        standing.Labels[line.Index] = [.. new[] { Best(path), Best([.. path.Reverse()]) }.OfType<Lettering>().Distinct()];

        Lettering? Best(Spot[] from)
        {
            for (var i = 1; i < from.Length; i++)
            {
                if (from[i - 1].Y == from[i].Y && Standing.Label(line, from[i - 1], from[i]) is var label && IsFree(label))
                {
                    return label;
                }
            }

            return null;
        }

        bool IsFree(Lettering label) =>
            !Texts(standing).Any(t => t.Area.Meets(label.Area))
            && !standing.Plates.All.Any(p => standing.Footprint(p).Meets(label.Area))
            && new Runs([.. standing.Paths.Where(p => p.Length > 0 && p != path)]).Through(label.Area, _ => true) == 0;
    }

    private static void Flag(Standing standing, Line line)
    {
        standing.Flags.Add(line.Wire.Name);
        var words = string.Create(CultureInfo.InvariantCulture, $"flag {standing.Flags.Count}: {line.Label}");
        foreach (var end in new[] { line.A, line.B })
        {
            var row = end.Plate.Pins.Where(p => Names.Same(p.Mark, end.Mark)).Select(p => p.First).DefaultIfEmpty(0).First();
            var near = standing.Edge(end.Plate, row, right: true);
            standing.Labels[line.Index] = standing.Labels[line.Index].Add(FreePlace.Flag(standing, new Lettering(words, near, Hold.Start) { Bold = true, Wire = line.Wire.Name }));
        }
    }

    private static Spot[] Straightened(List<Spot> way)
    {
        var kept = new List<Spot> { way[0] };
        for (var i = 1; i < way.Count; i++)
        {
            var turns = i == way.Count - 1 || (kept[^1].X == way[i].X) != (way[i].X == way[i + 1].X) || (kept[^1].Y == way[i].Y) != (way[i].Y == way[i + 1].Y);
            if (turns && way[i] != kept[^1])
            {
                kept.Add(way[i]);
            }
        }

        return [.. kept];
    }

    // A box moved over the edge takes a larger sheet.
    private static void Widen(Standing standing)
    {
        var reach = Reach(standing);
        var needed = Paper.For(reach.X - Paper.Left, reach.Y - Paper.Top);
        standing.Paper = needed.Width > standing.Paper.Width || needed.Height > standing.Paper.Height ? needed : standing.Paper;
    }

    private static Spot Reach(Standing standing)
    {
        var boxes = standing.Plates.All.Select(standing.Footprint).ToList();
        var spots = standing.Paths.SelectMany(p => p).ToList();
        return new Spot(
            boxes.Select(b => b.Right).Concat(spots.Select(s => s.X)).DefaultIfEmpty(0).Max(),
            boxes.Select(b => b.Bottom).Concat(spots.Select(s => s.Y)).DefaultIfEmpty(0).Max());
    }
}
