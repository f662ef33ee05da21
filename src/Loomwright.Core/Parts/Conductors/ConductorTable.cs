using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>One size of conductor in a table.</summary>
/// <param name="Name">As the reel says it: <c>0.5 mm²</c>, <c>20 AWG</c>.</param>
/// <param name="OhmsPerMetre">At 20 °C.</param>
public sealed record ConductorRow(string Name, CrossSection Size, double OhmsPerMetre);

/// <summary>Resistance of copper conductors by size at 20 °C, from one source, with that source's temperature coefficient. The nominal area is a name: resistance never comes from ρL/A.</summary>
/// <param name="Basis">Where the figures come from, and how far they were checked.</param>
/// <param name="PerKelvin">Temperature coefficient at 20 °C.</param>
/// <param name="Rows">From thin to thick.</param>
public sealed record ConductorTable(string Name, string Basis, double PerKelvin, ImmutableArray<ConductorRow> Rows)
{
    /// <summary>Road-vehicle cable, uncoated copper, largest permitted resistance.</summary>
    public static ConductorTable Iso6722 { get; } = new("ISO 6722-1", "from memory; the 1.5 mm² figure corroborated by a published worked example", 0.00393, Metric(
    [
        (0.13, 136), (0.22, 84.8), (0.35, 54.4), (0.5, 37.1), (0.75, 24.7), (1, 18.5), (1.25, 14.9), (1.5, 12.7), (2, 9.42), (2.5, 7.60),
        (3, 6.15), (4, 4.71), (5, 3.94), (6, 3.14), (8, 2.38), (10, 1.82), (12, 1.52), (16, 1.16), (20, 0.955), (25, 0.743), (30, 0.647),
        (35, 0.527), (50, 0.368), (70, 0.259), (95, 0.196)
    ]));

    /// <summary>Flexible plain copper, class 5, largest permitted resistance; 0.14 to 0.34 mm² from DIN VDE 0295.</summary>
    public static ConductorTable Iec60228 { get; } = new("IEC 60228 class 5", "read in three public pages that reproduce it", 0.004, Metric(
    [
        (0.14, 134), (0.22, 96), (0.25, 76), (0.34, 53), (0.5, 39.0), (0.75, 26.0), (1, 19.5), (1.5, 13.3), (2.5, 7.98), (4, 4.95),
        (6, 3.30), (10, 1.91), (16, 1.21), (25, 0.780), (35, 0.554), (50, 0.386), (70, 0.272), (95, 0.206)
    ]));

    /// <summary>American wire gauge 40 to 4/0 by the law of ASTM B258: d = 0.127 mm · 92^((36 − n)/39), 17.241 mΩ·mm²/m. Stranded plated wire of the same gauge can have up to 27 % more.</summary>
    public static ConductorTable Awg { get; } = new("AWG, ASTM B258", "the law of the standard", 0.00393, [.. Enumerable.Range(-3, 44).Reverse().Select(Gauge)]);

    private static ImmutableArray<ConductorRow> Metric((double SquareMillimetres, double MilliohmsPerMetre)[] rows) =>
        [.. rows.Select(r => (Size: new CrossSection(r.SquareMillimetres), r.MilliohmsPerMetre)).Select(r => new ConductorRow(r.Size.ToString(), r.Size, r.MilliohmsPerMetre / 1000))];

    // n = 0, −1, −2, −3 are 1/0 to 4/0.
    private static ConductorRow Gauge(int n)
    {
        var millimetres = 0.127 * Math.Pow(92, (36 - n) / 39.0);
        var squareMillimetres = Math.PI / 4 * millimetres * millimetres;
        var name = n > 0 ? string.Create(CultureInfo.InvariantCulture, $"{n} AWG") : string.Create(CultureInfo.InvariantCulture, $"{1 - n}/0 AWG");
        return new ConductorRow(name, new CrossSection(squareMillimetres), 0.017241 / squareMillimetres);
    }
}
