using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>One stage from its site: the fuses for first power, then every step.</summary>
internal static class Staging
{
    private const int MostRounds = 4;

    /// <summary>
    /// The site with its small fuses in. What a fuse carries depends a little on its own resistance, so the choice is
    /// made again with the chosen ones in until it stays; ratings only grow.
    /// </summary>
    public static Site Fused(Site site)
    {
        var full = site.Connected;
        for (var round = 0; round < MostRounds; round++)
        {
            var walk = Walk(site);
            var chosen = Choose(site, full, walk);
            site = site with { LeadFuses = Leads(site, walk) };
            if (round > 0 && chosen.All(c => c.Value <= site.Fuses[c.Key]))
            {
                break;
            }

            site = site with { Fuses = chosen, Connected = Bench.Connected.WithFuses(full, chosen) };
        }

        return site;
    }

    /// <summary>The stage, and what it leaves open.</summary>
    public static (Stage Stage, ImmutableArray<string> Open) Write(Site site)
    {
        var steps = new Steps(site.Number);
        Fetching.Write(site, steps);
        Fetching.WriteTakeOut(site, steps);
        Connecting.Write(site, steps);
        new Measuring(site, steps).Write();
        var powering = new Powering(site, steps);
        powering.Write();
        var draws = Draws(powering.Frames);
        var main = site.Fuses.Keys.MaxBy(f => (Carries(powering.Frames, f), site.Fuses[f]));
        var fuse = BladeFuses.For(draws, main is null ? null : FinalOf(site, main));
        var stage = new Stage(site.Number, Wording.Title(site), Wording.Why(site, Troubles.IsAtLimit(site, powering.Frames)), draws, fuse, steps.Finish(), site.Connected) { Full = Unplugged.Of(Bench.Connected.Of(site.Whole.Loom, site.Reach), site.Whole, site.Aside), Site = site };
        return (stage, [.. Troubles.Of(site, powering.Frames), .. HiddenShorts.Of(stage.Steps, site.FeedSide)]);
    }

    private static IReadOnlyList<Frame> Walk(Site site)
    {
        var walk = new Powering(site with { Once = new Once() }, new Steps(site.Number));
        walk.Write();
        return walk.Frames;
    }

    // By what the wires on the key carry; never smaller than before.
    private static ImmutableDictionary<string, double> Leads(Site site, IReadOnlyList<Frame> walk) => site.Key
        .Select(k => site.PartOf(k.Control)?.Name).OfType<string>().Distinct(Names.Comparer)
        .ToImmutableDictionary(
            part => part,
            part => Math.Max(site.LeadFusesBefore.GetValueOrDefault(part), BladeFuses.For(new Current(OnWires(site, walk, part)), null).Rating.Amps),
            Names.Comparer);

    private static double OnWires(Site site, IReadOnlyList<Frame> walk, string part)
    {
        var wires = site.Connected.Wires.Where(w => Names.Same(w.From.Part, part) || Names.Same(w.To.Part, part)).Select(w => w.Name).ToHashSet(Names.Comparer);
        return walk.SelectMany(f => f.Phases).SelectMany(p => p.Wires).Where(w => wires.Contains(w.Wire)).Select(w => Math.Abs(w.Current.Amps)).DefaultIfEmpty().Max();
    }

    private static ImmutableDictionary<string, double> Choose(Site site, Loom full, IReadOnlyList<Frame> walk)
    {
        var fuses = Supplied.FusesAt(site.Whole).Where(f => full.Part(f.Name) is not null).Select(f => f.Name).ToList();
        var main = fuses.MaxBy(f => Carries(walk, f));
        return fuses.ToImmutableDictionary(
            f => f,
            f => BladeFuses.For(f == main ? Draws(walk) : new Current(Carries(walk, f)), FinalOf(site, f)).Rating.Amps,
            Names.Comparer);
    }

    private static Current Draws(IReadOnlyList<Frame> frames) =>
        new(frames.SelectMany(f => f.Phases).Select(p => p.Supply.Amps).DefaultIfEmpty().Max());

    private static double Carries(IReadOnlyList<Frame> frames, string fuse) =>
        frames.SelectMany(f => f.Fuses).Where(f => Names.Same(f.Part, fuse)).Select(f => Math.Abs(f.Current.Amps)).DefaultIfEmpty().Max();

    private static Current? FinalOf(Site site, string fuse) =>
        fuse == Supplied.Fuse || site.Whole.Loom.Part(fuse)?.Settings.Number("rating") is not { } amps ? null : new Current(amps);
}
