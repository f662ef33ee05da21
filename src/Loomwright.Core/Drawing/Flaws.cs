namespace Loomwright.Drawing;

/// <summary>What is wrong with a drawn sheet, counted on the sheet itself. All but the crossings must be none.</summary>
/// <param name="Overlaps">Stretches where two wires lie side by side less than 6 px apart.</param>
/// <param name="Touches">Bends or ends of one wire on another.</param>
/// <param name="ThroughCells">Wires that run through the inside of a part.</param>
/// <param name="CollidingLabels">Texts on another text, labels on a part, and texts on a wire they do not belong to.</param>
/// <param name="Unrouted">Wires without a line.</param>
/// <param name="Crossings">Places where two wires cross.</param>
/// <param name="StraightCrossings">Crossings there would be if every wire went straight between the same two ends.</param>
public sealed record Flaws(int Overlaps, int Touches, int ThroughCells, int CollidingLabels, int Unrouted, int Crossings, int StraightCrossings)
{
    /// <summary>Whether there is nothing but crossings.</summary>
    public bool None => Overlaps + Touches + ThroughCells + CollidingLabels + Unrouted == 0;

    /// <summary>Counts them.</summary>
    public static Flaws Of(Scene scene)
    {
        var strands = scene.Strands;
        var runs = new Runs([.. strands.Select(s => (IReadOnlyList<Spot>)s.Path)]);
        return new Flaws(
            runs.Overlaps(),
            runs.Touches(),
            scene.Cells.Where(c => c.Outlined).Sum(c => runs.Through(c.Area.Inside(1), _ => true)),
            Collisions(scene, runs),
            scene.Unrouted.Length,
            runs.Crossings().Count(),
            Straight(scene));
    }

    private static int Collisions(Scene scene, Runs runs)
    {
        var areas = scene.Letterings.Select(l => l.Area).ToArray();
        var count = 0;
        for (var a = 0; a < areas.Length; a++)
        {
            var text = scene.Letterings[a];
            for (var b = a + 1; b < areas.Length; b++)
            {
                count += areas[a].Meets(areas[b]) ? 1 : 0;
            }

            count += text.Wire is null ? 0 : scene.Cells.Count(c => c.Outlined && c.Area.Meets(areas[a]));
            count += runs.Through(areas[a], i => scene.Strands[i].Wire != text.Wire);
        }

        return count;
    }

    private static int Straight(Scene scene)
    {
        var ends = scene.Strands.Select(s => (A: s.Path[0], B: s.Path[^1])).ToArray();
        var count = 0;
        for (var a = 0; a < ends.Length; a++)
        {
            for (var b = a + 1; b < ends.Length; b++)
            {
                count += Side(ends[a].A, ends[a].B, ends[b].A) * Side(ends[a].A, ends[a].B, ends[b].B) < 0
                    && Side(ends[b].A, ends[b].B, ends[a].A) * Side(ends[b].A, ends[b].B, ends[a].B) < 0 ? 1 : 0;
            }
        }

        return count;

        static int Side(Spot a, Spot b, Spot p) => Math.Sign(((b.X - a.X) * (p.Y - a.Y)) - ((b.Y - a.Y) * (p.X - a.X)));
    }
}
