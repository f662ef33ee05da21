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
        foreach (var (wire, end) in bike.Aside.Cables)
        {
            steps.Add(Act.Connect, $"On the stand, in neutral, wheel free. {wire.Name}: on {bike.Mark(end)}, booted. It is the last lead to go on.", s => s with { Wire = wire.Name, Marks = [bike.Mark(end)], Cautions = bike.Once.Say(Cautions.Starter) });
        }

        var tour = new Tour(bike, steps, bike.Loom);
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
        return bike.Stage(number, "cranking", "Hundreds of amps find the cable and the strap that milliamps do not.", steps, tour.Frames, bike.Loom);
    }

    private void Read(Tour tour, Line line)
    {
        var (feed, back) = Sighted.Ends(bike.Paths, Sighted.Tie(bike.Paths, line.Loads[0]));
        if (tour.Read(bike.Paths.Plus, bike.Paths.Minus) is { } volts)
        {
            tour.Volts("Battery while it cranks", bike.Paths.Plus, bike.Paths.Minus, "volts", Bands.Of(volts));
        }

        tour.Drop("Lost on the feed side (aim at most 0.5 V)", bike.Paths.Feed, feed, "volts");
        tour.Drop("Lost on the ground side (aim at most 0.3 V)", back, bike.Paths.Return, "volts");
    }
}
