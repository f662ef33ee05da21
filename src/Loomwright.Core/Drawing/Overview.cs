using Loomwright.Design;

namespace Loomwright.Drawing;

/// <summary>The whole bike on one sheet: parts by place from rear to front, every wire its own line.</summary>
internal static class Overview
{
    /// <summary>The sheet. More trials, fewer crossings; the count alone bounds the time.</summary>
    public static Scene Of(Loom loom, int trials)
    {
        var plates = new Plates(loom);
        var most = Math.Clamp(plates.All.Length, 1, 9);
        foreach (var paper in new[] { Paper.A4, Paper.A3 })
        {
            var (columns, _, arrangement) = Enumerable.Range(Math.Min(3, most), most - Math.Min(3, most) + 1)
                .Select(c => Look(loom, plates, paper, c, Math.Max(3, trials / 10)))
                .MinBy(l => l.Price);
            Stand(loom, plates, columns);
            arrangement = Search.Best(plates, paper, arrangement, trials).Arrangement;
            var layout = new Layout(plates, arrangement);
            if (paper == Paper.A3 || (layout.Width <= paper.BodyWidth && layout.Height <= paper.BodyHeight))
            {
                return OverviewScene.Of(loom, plates, arrangement, layout);
            }
        }

        throw new InvalidOperationException("the largest paper takes everything");
    }

    private static (int Columns, double Price, Arrangement Arrangement) Look(Loom loom, Plates plates, Paper paper, int columns, int trials)
    {
        Stand(loom, plates, columns);
        var (arrangement, price) = Search.Best(plates, paper, Arrangement.First(plates, columns), trials);
        return (columns, price, arrangement);
    }

    private static void Stand(Loom loom, Plates plates, int columns)
    {
        Columns.Assign(loom, plates, columns);
        Columns.Sides(plates, columns);
        plates.Lay();
    }
}
