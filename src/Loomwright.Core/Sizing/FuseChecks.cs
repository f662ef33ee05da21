using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.Sizing;

/// <summary>A fuse against the wire behind it, from its rating up: the hottest the conductor gets while the fuse may still be whole.</summary>
/// <param name="At">The current that does it.</param>
/// <param name="Hottest">The conductor then, begun at the air's temperature.</param>
/// <param name="For">How long the fuse may stand that current; null where it need not open.</param>
public sealed record FuseAgainstWire(Current At, Temperature Hottest, TimeSpan? For)
{
    /// <summary>Over the whole range of currents.</summary>
    public static FuseAgainstWire Of(FuseBand band, double ratingAmps, Heat heat) => Currents.Between(ratingAmps, 20 * ratingAmps, band, ratingAmps)
        .Select(amps => (amps, most: band.MostSeconds(amps / ratingAmps)))
        .Select(x => new FuseAgainstWire(
            new Current(x.amps),
            x.most is { } seconds ? heat.After(heat.Air, x.amps, seconds) : heat.Settled(x.amps),
            x.most is { } time ? TimeSpan.FromSeconds(time) : null))
        .MaxBy(x => x.Hottest.Celsius)!;
}

/// <summary>A main fuse and one behind it: only the one behind should open.</summary>
public static class Selectivity
{
    /// <summary>The smallest current at which the main fuse may open although only the branch should; null when there is none up to the most that can flow.</summary>
    public static Current? LostFrom(FuseBand branch, double branchAmps, FuseBand main, double mainAmps, double mostAmps)
    {
        foreach (var amps in Currents.Between(branchAmps, mostAmps, branch, branchAmps).Concat(Currents.Between(mainAmps, mostAmps, main, mainAmps)).Order())
        {
            if (main.LeastSeconds(amps / mainAmps) is { } least && (branch.MostSeconds(amps / branchAmps) is not { } most || most > least))
            {
                return new Current(amps);
            }
        }

        return null;
    }
}

/// <summary>The first milliseconds of a cold filament against the fastest a fuse may open.</summary>
public static class Inrush
{
    /// <summary>A filament takes ten to fifteen times its current and is at half after less than this (public application notes).</summary>
    public const double Seconds = 0.005;

    /// <summary>Whether a fuse may open on it.</summary>
    public static bool MayOpen(FuseBand band, double ratingAmps, double inrushAmps) => band.LeastSeconds(inrushAmps / ratingAmps) is { } least && least < Seconds;
}

internal static class Currents
{
    private const int Steps = 400;

    /// <summary>From little to much on a logarithmic scale, a band's own points among them and just below them, where what it promises changes.</summary>
    public static IEnumerable<double> Between(double least, double most, FuseBand band, double ratingAmps) => most <= least ? [] :
        Enumerable.Range(0, Steps + 1).Select(i => least * Math.Pow(most / least, i / (double)Steps))
            .Concat(band.Points.SelectMany(p => new[] { p.Share * ratingAmps * 0.9999, p.Share * ratingAmps }).Where(a => a >= least && a <= most))
            .Order();
}
