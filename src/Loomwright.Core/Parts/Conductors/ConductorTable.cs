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
    public static ConductorTable Iso6722 { get; } = new("ISO 6722-1", "from memory; the 1.5 mm² figure corroborated by a published worked example", Copper.PerKelvin, Metric(
    [
        (0.13, 136), (0.22, 84.8), (0.35, 54.4), (0.5, 37.1), (0.75, 24.7), (1, 18.5), (1.25, 14.9), (1.5, 12.7), (2, 9.42), (2.5, 7.60),
        (3, 6.15), (4, 4.71), (5, 3.94), (6, 3.14), (8, 2.38), (10, 1.82), (12, 1.52), (16, 1.16), (20, 0.955), (25, 0.743), (30, 0.647),
        (35, 0.527), (50, 0.368), (70, 0.259), (95, 0.196)
    ]));

    /// <summary>Flexible plain copper, class 5, largest permitted resistance; 0.14 to 0.34 mm² from DIN VDE 0295.</summary>
    public static ConductorTable Iec60228 { get; } = Iec("class 5",
    [
        (0.14, 134), (0.22, 96), (0.25, 76), (0.34, 53), (0.5, 39.0), (0.75, 26.0), (1, 19.5), (1.5, 13.3), (2.5, 7.98), (4, 4.95),
        (6, 3.30), (10, 1.91), (16, 1.21), (25, 0.780), (35, 0.554), (50, 0.386), (70, 0.272), (95, 0.206)
    ]);

    /// <summary>The same, tinned.</summary>
    public static ConductorTable Iec60228Tinned { get; } = Iec("class 5 tinned",
        [(0.5, 40.1), (0.75, 26.7), (1, 20.0), (1.5, 13.7), (2.5, 8.21), (4, 5.09), (6, 3.39), (10, 1.95), (16, 1.24), (25, 0.795), (35, 0.565), (50, 0.393), (70, 0.277), (95, 0.210)]);

    /// <summary>Solid and coarsely stranded plain copper, classes 1 and 2.</summary>
    public static ConductorTable Iec60228Stiff { get; } = Iec("class 1 and 2",
        [(0.5, 36.0), (0.75, 24.5), (1, 18.1), (1.5, 12.1), (2.5, 7.41), (4, 4.61), (6, 3.08), (10, 1.83), (16, 1.15), (25, 0.727), (35, 0.524), (50, 0.387), (70, 0.268), (95, 0.193)]);

    /// <summary>The same, class 2, tinned.</summary>
    public static ConductorTable Iec60228StiffTinned { get; } = Iec("class 2 tinned",
        [(0.5, 36.7), (0.75, 24.8), (1, 18.2), (1.5, 12.2), (2.5, 7.56), (4, 4.70), (6, 3.11), (10, 1.84), (16, 1.16), (25, 0.734), (35, 0.529), (50, 0.391), (70, 0.270), (95, 0.195)]);

    /// <summary>Stranded tin-plated aircraft wire by gauge, largest resistance; printed in ohms per 1000 ft.</summary>
    public static ConductorTable Aircraft { get; } = new("FAA AC 43.13-1B table 11-9", "read in the circular", 1 / (Copper.ZeroCelsius + 20),
    [
        .. new (int N, double SquareMillimetres, double OhmsPer1000Feet)[]
        {
            (24, 0.24069, 28.4), (22, 0.38256, 16.2), (20, 0.61616, 9.88), (18, 0.96274, 6.23), (16, 1.2293, 4.81), (14, 1.9412, 3.06), (12, 2.9764, 2.02),
            (10, 4.7397, 1.26), (8, 8.6054, 0.7), (6, 13.589, 0.44), (4, 21.593, 0.28), (2, 33.696, 0.18), (1, 41.398, 0.15), (0, 52.951, 0.12), (-1, 67.392, 0.09),
            (-2, 84.367, 0.07), (-3, 106.86, 0.06),
        }.Select(r => new ConductorRow(Called(r.N), new CrossSection(r.SquareMillimetres), r.OhmsPer1000Feet / 304.8)),
    ]);

    /// <summary>American wire gauge 40 to 4/0 by the law of ASTM B258: d = 0.127 mm · 92^((36 − n)/39), 17.241 mΩ·mm²/m. Stranded plated wire of the same gauge can have up to 27 % more.</summary>
    public static ConductorTable Awg { get; } = new("AWG, ASTM B258", "the law of the standard", Copper.PerKelvin, [.. Enumerable.Range(-3, 44).Reverse().Select(Gauge)]);

    private static ConductorTable Iec(string conductors, (double SquareMillimetres, double MilliohmsPerMetre)[] rows) =>
        new($"IEC 60228 {conductors}", "read in three public pages that reproduce it", 0.004, Metric(rows));

    private static ImmutableArray<ConductorRow> Metric((double SquareMillimetres, double MilliohmsPerMetre)[] rows) =>
        [.. rows.Select(r => (Size: new CrossSection(r.SquareMillimetres), r.MilliohmsPerMetre)).Select(r => new ConductorRow(r.Size.ToString(), r.Size, r.MilliohmsPerMetre / 1000))];

    // n = 0, −1, −2, −3 are 1/0 to 4/0.
    private static string Called(int n) => n > 0 ? string.Create(CultureInfo.InvariantCulture, $"{n} AWG") : string.Create(CultureInfo.InvariantCulture, $"{1 - n}/0 AWG");

    private static ConductorRow Gauge(int n)
    {
        var millimetres = 0.127 * Math.Pow(92, (36 - n) / 39.0);
        var squareMillimetres = Math.PI / 4 * millimetres * millimetres;
        return new ConductorRow(Called(n), new CrossSection(squareMillimetres), Copper.Resistivity / squareMillimetres);
    }
}
