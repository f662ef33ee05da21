using System.Collections.Immutable;

namespace Loomwright.Parts;

/// <summary>What a standard says of a fuse at one multiple of its rating.</summary>
/// <param name="Share">Current over rating.</param>
/// <param name="LeastSeconds">It must not open before.</param>
/// <param name="MostSeconds">It must have opened by then; null where it need not open.</param>
/// <param name="FromMemory">The row was not checked against a copy of the standard.</param>
public sealed record FusePoint(double Share, double LeastSeconds, double? MostSeconds, bool FromMemory = false);

/// <summary>
/// Opening times of one form of fuse at 23 °C: between the points of its standard straight lines on logarithmic scales,
/// beyond the last point the same I²t. A band, never one time.
/// </summary>
/// <param name="Name">The form, as the fuse's setting says it.</param>
/// <param name="Source">The standard.</param>
/// <param name="Basis">How far the figures were checked.</param>
/// <param name="Points">From little to much current.</param>
public sealed record FuseBand(string Name, string Source, string Basis, ImmutableArray<FusePoint> Points)
{
    /// <summary>Blade fuses, medium, low profile and miniature.</summary>
    public static FuseBand Blade { get; } = new("blade", "ISO 8820-3 type C and F", "160 % and 200 % read in a public extract, the others from memory",
    [
        new(1.10, 360000, null, FromMemory: true), new(1.35, 0.75, 600, FromMemory: true), new(1.60, 0.25, 50), new(2, 0.15, 5),
        new(3.50, 0.04, 0.5, FromMemory: true), new(6, 0.02, 0.1, FromMemory: true),
    ]);

    /// <summary>Bolted strips for high currents.</summary>
    public static FuseBand BoltDown { get; } = new("bolt-down", "ISO 8820-5", "read in a public summary",
        [new(1, 360000, null), new(1.35, 60, 1800), new(2, 2, 50), new(3.50, 0.2, 7), new(6, 0.04, 1)]);

    /// <summary>From this share of its rating up it opens in the end.</summary>
    public double OpensAtShare => Opening[0].Share;

    /// <summary>Seconds a fuse stands a share of its rating for sure; null where it stands it for good.</summary>
    public double? LeastSeconds(double share) => Between(Points.AsSpan(), share, static p => p.LeastSeconds);

    /// <summary>Seconds by which it has opened for sure; null where it need not open.</summary>
    public double? MostSeconds(double share) => Between(Opening, share, static p => p.MostSeconds!.Value);

    /// <summary>The middle of the band on a logarithmic scale; null where it need not open. To say which of two opens first, never to promise a time.</summary>
    public double? LikelySeconds(double share) => MostSeconds(share) is { } most ? Math.Sqrt(LeastSeconds(share)!.Value * most) : null;

    // The points from where it need open; below them stand those where it need not.
    private ReadOnlySpan<FusePoint> Opening
    {
        get
        {
            var points = Points.AsSpan();
            while (points[0].MostSeconds is null)
            {
                points = points[1..];
            }

            return points;
        }
    }

    private static double? Between(ReadOnlySpan<FusePoint> points, double share, Func<FusePoint, double> seconds)
    {
        if (share < points[0].Share)
        {
            return null;
        }

        for (var p = 1; p < points.Length; p++)
        {
            if (share <= points[p].Share)
            {
                var part = Math.Log(share / points[p - 1].Share) / Math.Log(points[p].Share / points[p - 1].Share);
                return Math.Exp((Math.Log(seconds(points[p - 1])) * (1 - part)) + (Math.Log(seconds(points[p])) * part));
            }
        }

        return seconds(points[^1]) * Math.Pow(points[^1].Share / share, 2);
    }
}
