namespace Loomwright.Drawing;

/// <summary>Looks for an arrangement that reads well. Bounded by a count of trials, seeded: the same design gives the same sheet.</summary>
internal static class Search
{
    private const int Seed = 12;
    private const double UsualPerPixel = 10;

    // How much dearer a trial may be at the beginning and still be gone on from.
    private const double Slack = 12;

    /// <summary>The best of the trials, from a first arrangement.</summary>
    /// <param name="perPixel">What each pixel over the edge of the paper costs.</param>
    public static (Arrangement Arrangement, double Price) Best(Plates plates, Paper paper, Arrangement first, int trials, double perPixel = UsualPerPixel)
    {
        var dice = new Random(Seed);
        var (current, stands) = (first, new Layout(plates, first));
        var currentPrice = Price(plates, paper, first, stands, perPixel);
        var (best, bestPrice) = (current, currentPrice);
        for (var trial = 0; trial < trials; trial++)
        {
            var next = current.Copy();
            Move(plates, next, stands, dice);
            var layout = new Layout(plates, next);
            var price = Price(plates, paper, next, layout, perPixel);
            if (price > currentPrice + (Slack * Math.Pow((double)(trials - trial) / trials, 3)))
            {
                continue;
            }

            (current, currentPrice, stands) = (next, price, layout);
            (best, bestPrice) = price < bestPrice ? (next, price) : (best, bestPrice);
        }

        return (best, bestPrice);
    }

    private static double Price(Plates plates, Paper paper, Arrangement at, Layout layout, double perPixel)
    {
        var runs = new Runs(layout.Paths);
        var thick = plates.Lines.Select(l => l.Wire.Size.SquareMillimetres >= 4).ToArray();
        var crossings = runs.Crossings().Sum(c => thick[c.Upright] || thick[c.Level] ? 18 : 10);
        var (bends, length) = runs.Effort();
        return crossings + (bends * 2) + (length / 250) + (140 * Torn(at)) + (1000 * runs.Overlaps())
            + (perPixel * Math.Max(0, layout.Width - paper.BodyWidth)) + (perPixel * Math.Max(0, layout.Height - paper.BodyHeight));
    }

    // Runs of one place in a column beyond the first.
    private static int Torn(Arrangement at)
    {
        var torn = 0;
        for (var c = 0; c < at.Columns; c++)
        {
            foreach (var side in new[] { at.Above[c], at.Below[c] })
            {
                var runs = side.Where((p, i) => i == 0 || side[i - 1].Place != p.Place).Select(p => p.Place).ToList();
                torn += runs.Count - runs.Distinct(StringComparer.Ordinal).Count();
            }
        }

        return torn;
    }

    // The mean height of the far ends of the wires of these plates.
    private static double Height(Plates plates, Layout stands, List<Plate> of) =>
        of.SelectMany(p => p.Ends).Select(e => plates.Of(e)).Select(l => of.Contains(l.A.Plate) ? l.B : l.A).Select(e => stands.Y(e.Plate, e.Row)).DefaultIfEmpty(0).Average();

    private static void Move(Plates plates, Arrangement at, Layout stands, Random dice)
    {
        var column = dice.Next(at.Columns);
        var (above, below) = (at.Above[column], at.Below[column]);
        var count = above.Count + below.Count;
        if (count == 0)
        {
            return;
        }

        var (from, to) = (dice.Next(count), dice.Next(count));
        switch (dice.Next(6))
        {
            case 0:
                var (a, b) = (At(from), At(to));
                (a.Side[a.Index], b.Side[b.Index]) = (b.Side[b.Index], a.Side[a.Index]);
                break;
            case 1:
                var taken = Take(At(from));
                var side = dice.Next(2) == 0 ? above : below;
                side.Insert(dice.Next(side.Count + 1), taken);
                break;
            case 2:
                var drawn = Take(At(from));
                Beside([drawn], Height(plates, stands, [drawn]));
                break;
            case 3:
                // A whole place changes sides or goes elsewhere on its side.
                var (run, at0) = At(from);
                var place = run[at0].Place;
                var group = run.Where(p => p.Place == place).ToList();
                run.RemoveAll(group.Contains);
                if (dice.Next(2) == 0)
                {
                    Beside(group, Height(plates, stands, group));
                    break;
                }

                var target = dice.Next(2) == 0 ? above : below;
                target.InsertRange(dice.Next(2) == 0 ? 0 : target.Count, group);
                break;
            case 4:
                var (reversed, _) = At(from);
                var start = dice.Next(reversed.Count);
                reversed.Reverse(start, dice.Next(reversed.Count - start) + 1);
                break;
            default:
                var (nudged, index) = At(from);
                var plate = nudged[index].Index;
                at.HalfRows[plate] = Math.Clamp(at.HalfRows[plate] + (dice.Next(2) == 0 ? 1 : -1), 0, 6);
                break;
        }

        // At the height their partners have, as far as what stands there lets them.
        void Beside(List<Plate> plates, double height)
        {
            var up = height < stands.SpineMiddle;
            var nearer = (up ? above : below).Count(p => up ? stands.Y(p, p.Rows.Count / 2) > height : stands.Y(p, p.Rows.Count / 2) < height);
            (up ? above : below).InsertRange(nearer, plates);
        }

        (List<Plate> Side, int Index) At(int i) => i < above.Count ? (above, i) : (below, i - above.Count);

        static Plate Take((List<Plate> Side, int Index) spot)
        {
            var plate = spot.Side[spot.Index];
            spot.Side.RemoveAt(spot.Index);
            return plate;
        }
    }
}
