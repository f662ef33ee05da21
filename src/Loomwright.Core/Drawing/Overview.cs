using Loomwright.Design;

namespace Loomwright.Drawing;

/// <summary>The whole bike on one sheet: parts by place from rear to front, every wire its own line.</summary>
internal static class Overview
{
    // Above this many lines no arrangement found so far fitted A4.
    private const int MostOnA4 = 85;

    // What nearly fits is pressed onto the sheet, at the cost of crossings.
    private const double DearPerPixel = 80;

    /// <summary>The sheet. Many more trials mostly give fewer crossings, a few more need not; the count alone bounds the time.</summary>
    public static Scene Of(Loom loom, int trials) => OverviewScene.Of(loom.Name, Stand(loom, trials));

    /// <summary>Where everything stands: as kept in the design, or as the search finds it.</summary>
    public static Standing Stand(Loom loom, int trials)
    {
        var plates = new Plates(loom);
        var standing = loom.Placing.Arranged is { } arranged && plates.Standing.Any() ? AsKept(loom, plates, arranged) : Found(loom, plates, trials);
        LaidAgain.Lay(standing, loom.Placing);
        return standing;
    }

    private static Standing AsKept(Loom loom, Plates plates, Arranged arranged)
    {
        var (kept, at) = Kept.Of(plates, loom.Placing, arranged);
        var standing = Standing.Of(loom, at, new Layout(plates, at, kept), plates, Paper.A4, new Spot(0, arranged.SpineTop));
        return standing;
    }

    private static Standing Found(Loom loom, Plates plates, int trials)
    {
        var most = Math.Clamp(plates.All.Length, 1, 9);
        return Found(loom, plates, trials, Math.Min(3, most), most, columns =>
        {
            Columns.Assign(loom, plates, columns);
            return columns;
        });
    }

    /// <summary>The best of the numbers of columns, searched further.</summary>
    /// <param name="assign">Gives every plate its column; says how many columns there are with those beside them.</param>
    public static Standing Found(Loom loom, Plates plates, int trials, int least, int most, Func<int, int> assign)
    {
        foreach (var paper in plates.Lines.Length > MostOnA4 ? [Paper.A3] : new[] { Paper.A4, Paper.A3 })
        {
            var (columns, _, arrangement) = Enumerable.Range(least, most - least + 1)
                .Select(c => Look(plates, paper, c, Math.Max(3, trials / 10), assign))
                .MinBy(l => l.Price);
            Prepare(plates, columns, assign);
            arrangement = Search.Best(plates, paper, arrangement, trials).Arrangement;
            if (!Fits(paper, new Layout(plates, arrangement)))
            {
                arrangement = Search.Best(plates, paper, arrangement, trials, DearPerPixel).Arrangement;
            }

            var layout = new Layout(plates, arrangement);
            if (paper == Paper.A3 || Fits(paper, layout))
            {
                var sheet = Paper.For(layout.Width, layout.Height);
                var (x, y) = (Paper.Left + ((sheet.BodyWidth - layout.Width) / 2), Paper.Top + ((sheet.BodyHeight - layout.Height) / 2) - layout.Top);
                return Standing.Of(loom, arrangement, layout, plates, sheet, new Spot(2 * Math.Round(x / 2), 2 * Math.Round(y / 2)));
            }
        }

        throw new InvalidOperationException("the largest paper takes everything");
    }

    private static bool Fits(Paper paper, Layout layout) => layout.Width <= paper.BodyWidth && layout.Height <= paper.BodyHeight;

    private static (int Columns, double Price, Arrangement Arrangement) Look(Plates plates, Paper paper, int columns, int trials, Func<int, int> assign)
    {
        var all = Prepare(plates, columns, assign);
        var (arrangement, price) = Search.Best(plates, paper, Arrangement.First(plates, all), trials);
        return (columns, price, arrangement);
    }

    private static int Prepare(Plates plates, int columns, Func<int, int> assign)
    {
        var all = assign(columns);
        Columns.Sides(plates, all);
        plates.Lay();
        return all;
    }
}
