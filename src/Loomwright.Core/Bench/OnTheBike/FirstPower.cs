using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Sizing;

namespace Loomwright.Bench.OnTheBike;

/// <summary>The small fuse first, at rest and with the key on; starter, pump and coil off.</summary>
internal sealed class FirstPower(Everything bike)
{
    public Stage Stage(int number)
    {
        var probe = new Rig(bike.Aside.Quiet).Play(bike.Key);
        var draws = probe.SelectMany(f => f.Phases).Select(p => p.Supply.Amps).Max();
        var fuses = Supplied.FusesAt(bike.Paths).ToList();
        var largest = fuses.Select(f => f.Settings.Number("rating")).OfType<double>().DefaultIfEmpty(Sold.Blades[^1].Amps).Max();
        var small = BladeFuses.For(new Current(draws), new Current(largest)).Rating.Amps;

        // A breaker cannot be changed for a small one: then one fuse stands before everything.
        var isOne = fuses.Count == 0 || fuses.Count < Supplied.ProtectorsAt(bike.Paths).Count();
        var loom = isOne ? Fused(Supplied.WithFuse(bike.Aside.Quiet, bike.Paths.Feed), Supplied.Fuse, small)
            : fuses.Aggregate(bike.Aside.Quiet, (l, f) => Fused(l, f.Name, Math.Min(small, f.Settings.Number("rating") ?? small)));
        var steps = new Steps(number);
        TakeOff(steps);
        foreach (var fuse in isOne ? [] : fuses)
        {
            steps.Add(Act.Connect, $"{fuse.Name}: the {Fetching.FuseText(Math.Min(small, fuse.Settings.Number("rating") ?? small))} in, for now.", s => s with { Part = fuse.Name, Cautions = bike.Once.Say(Cautions.FirstPower) });
        }

        var feed = bike.Mark(bike.Paths.Feed);
        if (isOne)
        {
            steps.Add(Act.Connect, $"{Supplied.Fuse}: a holder with the {Fetching.FuseText(small)} between {feed} and every lead that is taken from there, for now.", s => s with { Part = Supplied.Fuse, Marks = [feed], Cautions = bike.Once.Say(Cautions.FirstPower) });
        }

        var tour = new Tour(bike, steps, loom);
        tour.PowerUp();
        tour.PowerDown();
        foreach (var fuse in isOne ? [] : fuses)
        {
            steps.Add(Act.PowerDown, $"{fuse.Name}: its own fuse back in, {new Current(fuse.Settings.Number("rating") ?? largest).Printed}.", s => s with { Part = fuse.Name });
        }

        if (isOne)
        {
            steps.Add(Act.PowerDown, $"{Supplied.Fuse}: out again, the leads back on {feed}.", s => s with { Part = Supplied.Fuse, Marks = [feed] });
        }

        return bike.Stage(number, "first power", "What the dead checks missed meets a small fuse first: it limits what lies behind that fuse.", steps, tour.Frames, loom, small);
    }

    private void TakeOff(Steps steps)
    {
        steps.Add(Act.Connect, "The bike on its stand, in neutral, the driven wheel free, nobody astride.", s => s with { Cautions = bike.Once.Say(Cautions.Stand) });
        foreach (var (wire, end) in bike.Aside.Cables)
        {
            steps.Add(Act.Connect, $"{wire.Name}: off {bike.Mark(end)}, its end booted and tied clear. It stays off until cranking.", s => s with { Wire = wire.Name, Marks = [bike.Mark(end)] });
        }

        foreach (var part in bike.Aside.Parts)
        {
            steps.Add(Act.Connect, $"{part}: its leads off and capped. They stay off until its own stage.", s => s with { Part = part });
        }
    }

    private static Loom Fused(Loom loom, string fuse, double amps) => loom with
    {
        Parts = [.. loom.Parts.Select(p => p.Name == fuse ? p with { Settings = p.Settings.With("rating", new Value.Number(amps)) } : p)],
    };
}
