namespace Loomwright.Bench.OnTheBike;

/// <summary>One function after the other, by every control that brings it on.</summary>
internal sealed class Singles(Everything bike)
{
    public Stage Stage(int number)
    {
        var steps = new Steps(number);
        var tour = new Tour(bike, steps);
        tour.PowerUp();
        foreach (var line in bike.Survey.Loads.Where(l => !l.Cranks).DistinctBy(l => string.Join(", ", l.Do)))
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

        tour.PowerDown();
        return bike.Stage(number, "one at a time", "Each function alone, from every switch that asks for it.", steps, tour.Frames);
    }
}
