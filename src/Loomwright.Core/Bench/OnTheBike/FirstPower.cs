using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Sizing;

namespace Loomwright.Bench.OnTheBike;

/// <summary>The small fuse first, at rest and with the key on.</summary>
internal sealed class FirstPower(Everything bike)
{
    public Stage Stage(int number)
    {
        var probe = new Rig(bike.Loom).Play(bike.Key);
        var draws = probe.SelectMany(f => f.Phases).Select(p => p.Supply.Amps).Max();
        var fuses = Supplied.FusesAt(bike.Paths).ToList();
        var final = fuses.Select(f => f.Settings.Number("rating")).OfType<double>().DefaultIfEmpty(Sold.Blades[^1].Amps).Max();
        var small = BladeFuses.For(new Current(draws), new Current(final)).Rating.Amps;
        var steps = new Steps(number);
        foreach (var fuse in fuses)
        {
            steps.Add(Act.Connect, $"{fuse.Name}: the {Fetching.FuseText(Math.Min(small, fuse.Settings.Number("rating") ?? small))} in, for now.", s => s with { Part = fuse.Name, Cautions = bike.Once.Say(Cautions.FirstPower) });
        }

        var tour = new Tour(bike, steps);
        tour.PowerUp();
        tour.PowerDown();
        foreach (var fuse in fuses)
        {
            steps.Add(Act.PowerDown, $"{fuse.Name}: its own fuse back in, {new Current(fuse.Settings.Number("rating") ?? final).Printed}.", s => s with { Part = fuse.Name });
        }

        return bike.Stage(number, "first power", "Whatever the dead checks missed opens a small fuse now and hurts nothing.", steps, tour.Frames, small);
    }
}
