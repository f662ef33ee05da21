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
        var tour = new Tour(bike, steps);
        tour.PowerUp();
        var any = false;
        foreach (var group in bike.Survey.Loads.Where(l => !l.Cranks).GroupBy(l => string.Join(", ", l.Do)))
        {
            var loads = group.SelectMany(l => l.Loads).ToList();
            var frame = new Rig(bike.Loom).Play(bike.Key.Concat(group.First().Do.Where(o => !bike.Key.Contains(o))))[^1];
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

            foreach (var load in worth)
            {
                Drop(tour, load);
            }

            tour.BackToKey();
        }

        tour.PowerDown();
        return any ? bike.Stage(number, "volts lost under load", "A joint that only warms up shows in volts long before it shows in light.", steps, tour.Frames) : null;
    }

    private void Drop(Tour tour, string load)
    {
        var tie = Sighted.Tie(bike.Paths, load);
        var returns = bike.Paths.Joined(bike.Paths.Return, t => t.Via is Checks.Via.Wire or Checks.Via.Joint);
        var (feed, back) = returns.Contains(tie.A) && !returns.Contains(tie.B) ? (tie.B, tie.A) : (tie.A, tie.B);
        foreach (var (what, red, black) in new[] { ("feed", bike.Paths.Feed, feed), ("way back", back, bike.Paths.Return) })
        {
            if (!red.Equals(black) && tour.Read(red, black) is { } lost)
            {
                tour.Volts($"Lost on the {what} of {Spoken.Of(load)}", red, black, "volts lost", Bands.OfDrop(lost));
            }
        }
    }
}
