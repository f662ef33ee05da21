namespace Loomwright.Drawing;

/// <summary>Finds room for a box or a flag, as near as can be to where it is wanted.</summary>
internal static class FreePlace
{
    private const double Step = 10;
    private const int MostRings = 200;

    // Room for labels beside a box, and for a wire above and below.
    private const double Beside = 14;
    private const double AboveAndBelow = 8;

    /// <summary>Stands a box that came after the sheet was arranged: beside its partners, without lying on anything.</summary>
    public static void Stand(Standing standing, Plate plate)
    {
        var partners = plate.Ends.Select(e => standing.Plates.Of(e)).Select(l => (l.A.Plate == plate ? l.B : l.A).Plate).Where(p => !p.IsLate).ToList();
        var wanted = partners.Count == 0
            ? new Spot(Paper.Left + 100, Paper.Top + standing.Paper.BodyHeight)
            : new Spot(partners.Average(standing.Middle), partners.Average(p => standing.Box(p).Bottom));
        var edge = Edge(standing, plate, wanted, onWires: false);
        standing.StandAt(plate, edge.X, edge.Y);
    }

    /// <summary>The nearest middle of an upper edge at which a box lies on no other box.</summary>
    /// <param name="onWires">Whether it may lie on wires, which are then laid again.</param>
    public static Spot Edge(Standing standing, Plate plate, Spot wanted, bool onWires)
    {
        var others = standing.Plates.All.Where(p => p != plate && (!p.IsLate || standing.Middle(p) > 0)).Select(standing.Footprint)
            .Concat(standing.Rooms.Select(r => r.Lettering.Area))
            .ToList();
        var runs = new Runs([.. standing.Paths.Where(p => p.Length > 0)]);
        var labels = standing.Labels.SelectMany(l => l).Select(l => l.Area).ToList();
        foreach (var spot in Around(Even(wanted)))
        {
            standing.StandAt(plate, spot.X, spot.Y);
            var footprint = standing.Footprint(plate);
            var area = new Area(footprint.X - Beside, footprint.Y - AboveAndBelow, footprint.Width + (2 * Beside), footprint.Height + (2 * AboveAndBelow));
            if (footprint.X >= Paper.Left && footprint.Y >= Paper.Top && !others.Any(area.Meets)
                && (onWires || (runs.Through(area, _ => true) == 0 && !labels.Any(area.Meets))))
            {
                return spot;
            }
        }

        return Even(wanted);
    }

    /// <summary>A flag, moved to where it covers nothing.</summary>
    public static Lettering Flag(Standing standing, Lettering flag)
    {
        var boxes = standing.Plates.All.Select(standing.Footprint).ToList();
        var runs = new Runs([.. standing.Paths.Where(p => p.Length > 0)]);
        var texts = standing.Labels.SelectMany(l => l).Concat(standing.Rooms.Select(r => r.Lettering)).Select(l => l.Area).ToList();
        return Around(flag.At).Select(s => flag with { At = s }).FirstOrDefault(
            f => !boxes.Any(f.Area.Inside(-2).Meets) && !texts.Any(f.Area.Meets) && runs.Through(f.Area, _ => true) == 0,
            flag);
    }

    private static Spot Even(Spot spot) => new(2 * Math.Round(spot.X / 2), 2 * Math.Round(spot.Y / 2));

    // Square rings around a spot, in a fixed order.
    private static IEnumerable<Spot> Around(Spot spot)
    {
        yield return spot;
        for (var ring = 1; ring <= MostRings; ring++)
        {
            for (var i = -ring; i <= ring; i++)
            {
                yield return new Spot(spot.X + (i * Step), spot.Y + (ring * Step));
                yield return new Spot(spot.X + (i * Step), spot.Y - (ring * Step));
                yield return new Spot(spot.X + (ring * Step), spot.Y + (i * Step));
                yield return new Spot(spot.X - (ring * Step), spot.Y + (i * Step));
            }
        }
    }
}
