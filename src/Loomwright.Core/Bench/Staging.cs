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
            var chosen = Choose(site, full);
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
        var stage = new Stage(site.Number, Wording.Title(site), Wording.Why(site), draws, fuse, steps.Finish(), site.Connected);
        return (stage, [.. Troubles.Of(site, powering.Frames)]);
    }

    private static ImmutableDictionary<string, double> Choose(Site site, Loom full)
    {
        var walk = new Powering(site with { Once = new Once() }, new Steps(site.Number));
        walk.Write();
        var fuses = Supplied.FusesAt(site.Whole).Where(f => full.Part(f.Name) is not null).Select(f => f.Name).ToList();
        var main = fuses.MaxBy(f => Carries(walk.Frames, f));
        return fuses.ToImmutableDictionary(
            f => f,
            f => BladeFuses.For(f == main ? Draws(walk.Frames) : new Current(Carries(walk.Frames, f)), FinalOf(site, f)).Rating.Amps,
            Names.Comparer);
    }

    private static Current Draws(IReadOnlyList<Frame> frames) =>
        new(frames.SelectMany(f => f.Phases).Select(p => p.Supply.Amps).DefaultIfEmpty().Max());

    private static double Carries(IReadOnlyList<Frame> frames, string fuse) =>
        frames.SelectMany(f => f.Fuses).Where(f => Names.Same(f.Part, fuse)).Select(f => Math.Abs(f.Current.Amps)).DefaultIfEmpty().Max();

    private static Current? FinalOf(Site site, string fuse) =>
        fuse == Supplied.Fuse || site.Whole.Loom.Part(fuse)?.Settings.Number("rating") is not { } amps ? null : new Current(amps);
}
