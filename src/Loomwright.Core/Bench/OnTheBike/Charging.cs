using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench.OnTheBike;

/// <summary>Battery volts with the engine running.</summary>
internal sealed class Charging(Everything bike)
{
    public Stage? Stage(int number)
    {
        if (bike.Engine is not { } engine)
        {
            return null;
        }

        var steps = new Steps(number);
        var tour = new Tour(bike, steps, bike.Loom);
        tour.PowerUp();
        var isRunning = false;
        foreach (var position in engine.Positions.Where(p => !Names.Same(p, engine.Rest)))
        {
            var speed = Names.Same(position, "idle") ? "idle" : "5000 a minute";
            tour.Do(new Operation.Set(engine.Name, position), text: $"{(isRunning ? "In neutral: bring it to" : "On the stand, in neutral, wheel free: start the engine and let it run at")} {speed} ({engine.Name} to {position}).", cautions: [Cautions.Running]);
            isRunning = true;
            if (tour.Read(bike.Paths.Plus, bike.Paths.Minus) is { } volts)
            {
                tour.Volts($"Battery with the engine at {speed}", bike.Paths.Plus, bike.Paths.Minus, "charging volts at first", Bands.Of(volts), [.. Later(position)]);
            }
        }

        tour.Do(bike.Back(engine.Name), Act.PowerDown, text: $"Stop the engine with its switch, and wait until it stands ({engine.Name} to {engine.Rest}).");
        tour.PowerDown();
        return bike.Stage(number, "charging", "What goes out has to come back: below 13.5 V at 5000 it does not, above 15 V it boils.", steps, tour.Frames, bike.Loom);
    }

    // What a battery does while it fills is not computed.
    private static IEnumerable<Expectation> Later(string position) => Names.Same(position, "idle")
        ? []
        : [new Expectation("after some minutes", "13.5 V to 15 V (common practice); LiFePO4 at most 14.6 V")];
}
