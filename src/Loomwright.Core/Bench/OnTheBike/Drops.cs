using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Bench.OnTheBike;

/// <summary>Volts lost on the way there and the way back of every load that draws enough to tell.</summary>
internal sealed class Drops(Everything bike)
{
    private const double WorthADropAmps = 0.5;

    public Stage? Stage(int number)
    {
        var steps = new Steps(number);
        var tour = new Tour(bike, steps, bike.Aside.Quiet);
        tour.PowerUp();
        var any = Read(tour, bike.Survey.Loads.Where(l => !l.Cranks && !bike.Aside.Has(l)), bike.Aside.Quiet);
        tour.PowerDown();
        return any ? bike.Stage(number, "volts lost under load", "A joint that only warms up shows in volts long before it shows in light.", steps, tour.Frames, bike.Aside.Quiet) : null;
    }

    /// <summary>Reads them for lines that come on alone; false when none draws enough.</summary>
    public bool Read(Tour tour, IEnumerable<Line> lines, Loom connected)
    {
        var any = false;
        foreach (var group in lines.GroupBy(l => string.Join(", ", l.Do)))
        {
            var loads = group.SelectMany(l => l.Loads).ToList();
            var frame = new Rig(connected).Play(bike.Key.Concat(group.First().Do.Where(o => !bike.Key.Contains(o))))[^1];
            var worth = loads.Where(l => frame.Seen.Any(s => s.Name == l && Math.Abs(s.Current.Amps) >= WorthADropAmps)).ToList();
            if (worth.Count == 0)
            {
                continue;
            }

            any = true;
            foreach (var operation in group.First().Do.Where(o => !bike.Key.Contains(o)))
            {
                tour.Do(operation);
            }

            tour.Briefly(group.First());
            foreach (var load in worth)
            {
                Drop(tour, load);
            }

            tour.BackToKey();
        }

        return any;
    }

    private void Drop(Tour tour, string load)
    {
        var (feed, back) = Sighted.Ends(bike.Paths, Sighted.Tie(bike.Paths, load));
        tour.Drop($"Lost on the feed of {Spoken.Of(load)}", bike.Paths.Feed, feed, "volts lost");
        tour.Drop($"Lost on the way back of {Spoken.Of(load)}", back, bike.Paths.Return, "volts lost");
    }
}
