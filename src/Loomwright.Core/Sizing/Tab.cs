using System.Collections.Immutable;
using System.Globalization;

namespace Loomwright.Sizing;

/// <summary>A flat push-on terminal and what it usually carries. Sizes: IEC 61210, read in a public extract; the amps are practice (public summary), not a limit of the standard.</summary>
public sealed record Tab(double WidthMillimetres, double ThicknessMillimetres, double LeastAmps, double MostAmps)
{
    /// <summary>From narrow to wide.</summary>
    public static ImmutableArray<Tab> All { get; } = [new(2.8, 0.5, 2, 6), new(4.8, 0.5, 6, 15), new(4.8, 0.8, 10, 20), new(6.3, 0.8, 15, 32), new(9.5, 1.2, 25, 50)];

    /// <summary>The widest of that name among <c>blade 6.3 mm</c>, or null when an end is no blade.</summary>
    public static Tab? Of(string? end) => end is null || !end.Contains("blade", StringComparison.OrdinalIgnoreCase)
        ? null
        : All.LastOrDefault(t => end.Replace(',', '.').Contains(t.WidthMillimetres.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal));
}
