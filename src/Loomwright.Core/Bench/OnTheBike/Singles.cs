using System.Collections.Immutable;

namespace Loomwright.Bench.OnTheBike;

/// <summary>One function after the other, by every control that brings it on.</summary>
internal sealed class Singles(Everything bike)
{
    public Stage? Stage(int number)
    {
        var steps = new Steps(number);
        var tour = new Tour(bike, steps, bike.Aside.Quiet);
        tour.PowerUp();
        Operate(tour, [.. bike.Survey.Loads.Where(l => !l.Cranks && !bike.Aside.Has(l))]);
        tour.PowerDown();
        return bike.Stage(number, "one at a time", "Each function alone, from every switch that asks for it.", steps, tour.Frames, bike.Aside.Quiet);
    }

    /// <summary>Pumps and coils, plugged in for it; null when there are none.</summary>
    public Stage? Own(int number)
    {
        if (bike.Aside.Parts.IsEmpty)
        {
            return null;
        }

        var steps = new Steps(number);
        foreach (var part in bike.Aside.Parts)
        {
            steps.Add(Act.Connect, $"{part}: its leads on.", s => s with { Part = part, Cautions = bike.Once.Say([.. Risky.Cautions(bike.Loom.Part(part)!)]) });
        }

        var tour = new Tour(bike, steps, bike.Aside.WithoutStarter);
        var lines = bike.Survey.Loads.Where(bike.Aside.Has).ToImmutableArray();
        tour.PowerUp();
        new Drops(bike).Read(tour, lines, bike.Aside.WithoutStarter);
        Operate(tour, lines);
        tour.PowerDown();
        return bike.Stage(number, string.Join(", ", bike.Aside.Parts), "What sprays or sparks comes on when all else has been seen to work, and for seconds.", steps, tour.Frames, bike.Aside.WithoutStarter);
    }

    private void Operate(Tour tour, ImmutableArray<Line> lines)
    {
        foreach (var line in lines.DistinctBy(l => string.Join(", ", l.Do)))
        {
            foreach (var way in line.Also.Insert(0, line.Do).Where(w => w.Any(o => !bike.Key.Contains(o))))
            {
                foreach (var operation in way.Where(o => !bike.Key.Contains(o)))
                {
                    tour.Do(operation);
                }

                tour.BackToKey();
            }

            foreach (var end in line.Ends)
            {
                tour.Do(end);
                tour.BackToKey();
            }
        }
    }
}
