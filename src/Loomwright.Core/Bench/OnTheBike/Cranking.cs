using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Bench.OnTheBike;

/// <summary>Volts while the starter turns.</summary>
internal sealed class Cranking(Everything bike)
{
    public Stage? Stage(int number)
    {
        if (bike.Survey.Loads.FirstOrDefault(l => l.Cranks) is not { } line)
        {
            return null;
        }

        var steps = new Steps(number);
        var tour = new Tour(bike, steps);
        tour.PowerUp();
        foreach (var way in line.Also.Insert(0, line.Do))
        {
            foreach (var operation in way.Where(o => !bike.Key.Contains(o)))
            {
                tour.Do(operation);
            }

            Read(tour, line);
            tour.BackToKey();
        }

        foreach (var end in line.Ends)
        {
            tour.Do(end);
            foreach (var operation in line.Do.Where(o => !bike.Key.Contains(o)))
            {
                tour.Do(operation);
            }

            tour.BackToKey();
        }

        tour.PowerDown();
        return bike.Stage(number, "cranking", "Hundreds of amps find the cable and the strap that milliamps do not.", steps, tour.Frames);
    }

    private void Read(Tour tour, Line line)
    {
        var tie = Sighted.Tie(bike.Paths, line.Loads[0]);
        var returns = bike.Paths.Joined(bike.Paths.Return, t => t.Via is Checks.Via.Wire or Checks.Via.Joint);
        var (feed, back) = returns.Contains(tie.A) && !returns.Contains(tie.B) ? (tie.B, tie.A) : (tie.A, tie.B);
        Measure("Battery while it cranks", bike.Paths.Plus, bike.Paths.Minus, Bands.Of);
        Measure("Lost on the feed side (aim at most 0.5 V)", bike.Paths.Feed, feed, Bands.OfDrop);
        Measure("Lost on the ground side (aim at most 0.3 V)", back, bike.Paths.Return, Bands.OfDrop);

        void Measure(string text, TerminalRef red, TerminalRef black, Func<Voltage, Band> band)
        {
            if (tour.Read(red, black) is { } volts)
            {
                tour.Volts(text, red, black, "volts", band(volts), bike.Once.Say(Cautions.Starter));
            }
        }
    }
}
