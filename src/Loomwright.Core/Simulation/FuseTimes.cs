namespace Loomwright.Simulation;

/// <summary>
/// How long a blade fuse stands a current: the middle (on a logarithmic scale) between the shortest and the longest
/// time its standard allows, ISO 8820-3 type C and F. 160 % and 200 % are read from a public extract of it; 135 %,
/// 350 % and 600 % are from memory. Used to say which of two fuses opens first, never to promise a time.
/// </summary>
internal static class FuseTimes
{
    /// <summary>Share of the rating from which a fuse opens; from its rating up to here it is overloaded.</summary>
    public const double OpensAt = 1.35;

    private static readonly (double Share, double Least, double Most)[] Bands =
    [
        (1.35, 0.75, 600),
        (1.60, 0.25, 50),
        (2.00, 0.15, 5),
        (3.50, 0.04, 0.5),
        (6.00, 0.02, 0.1),
    ];

    /// <summary>Seconds until a fuse opens at a share of its rating; null when it need not open. Beyond 600 % the time at 600 % shortened with the square of the current.</summary>
    public static double? Seconds(double share)
    {
        if (share < OpensAt)
        {
            return null;
        }

        for (var b = 1; b < Bands.Length; b++)
        {
            if (share <= Bands[b].Share)
            {
                var part = Math.Log(share / Bands[b - 1].Share) / Math.Log(Bands[b].Share / Bands[b - 1].Share);
                return Math.Exp((Math.Log(Middle(Bands[b - 1])) * (1 - part)) + (Math.Log(Middle(Bands[b])) * part));
            }
        }

        var last = Bands[^1];
        return Middle(last) * Math.Pow(last.Share / share, 2);
    }

    private static double Middle((double Share, double Least, double Most) band) => Math.Sqrt(band.Least * band.Most);
}
