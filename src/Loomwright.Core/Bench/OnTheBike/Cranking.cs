using System.Collections.Immutable;
using Loomwright.Simulation;

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
        var off = Off(line);
        foreach (var part in off)
        {
            steps.Add(Act.Connect, $"{part}: its leads off and capped, so that the engine does not start while the starter is read.", s => s with { Part = part });
        }

        foreach (var (wire, end) in bike.Aside.Cables)
        {
            steps.Add(Act.Connect, $"On the stand, in neutral, wheel free. {wire.Name}: on {bike.Mark(end)}, booted, while {bike.Mark(bike.Paths.Return)} is off. It stays on from here.", s => s with { Wire = wire.Name, Marks = [bike.Mark(end)], Cautions = bike.Once.Say(Cautions.Starter) });
        }

        var connected = Unplugged.Of(bike.Loom, bike.Paths, off);
        var tour = new Tour(bike, steps, connected) { Cranks = true };
        ImmutableArray<string> mayStart = off.Any(p => Risky.IsCoil(bike.Loom.Part(p)!)) ? [] : [Cautions.MayStart];
        tour.PowerUp();
        foreach (var way in line.Also.Insert(0, line.Do))
        {
            foreach (var operation in way.Where(o => !bike.Key.Contains(o)))
            {
                tour.Do(operation, cautions: mayStart);
            }

            if (way == line.Do)
            {
                tour.Briefly(line);
                Read(tour, line);
            }

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
        foreach (var part in off)
        {
            steps.Add(Act.PowerDown, $"{part}: its leads on again.", s => s with { Part = part });
        }

        return bike.Stage(number, "cranking", "Hundreds of amps find the cable and the strap that milliamps do not.", steps, tour.Frames, connected);
    }

    // Pumps and coils, where the starter turns without them.
    private ImmutableArray<string> Off(Line line)
    {
        var without = new Rig(Unplugged.Of(bike.Loom, bike.Paths, bike.Aside.Parts)).Play(line.Do)[^1];
        return without.Seen.Any(s => s.Name == line.Loads[0] && Line.IsOn(s)) ? bike.Aside.Parts : [];
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
