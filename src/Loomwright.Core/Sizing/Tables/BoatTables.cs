using System.Collections.Immutable;

namespace Loomwright.Sizing;

/// <summary>The United States' rule for small craft.</summary>
internal static class BoatTables
{
    private const string Sizes = "18 16 14 12 10 8 6 4 3 2 1 1/0 2/0 3/0 4/0";

    public static AmpacityRule Code { get; } = new("33 CFR 183.425", "33 CFR 183.425 table 5 and 183.455", "table read in the federal text; bundle shares from memory", "30 °C air, below 50 V; the protector up to 150 %")
    {
        ProtectorShare = 1.5,
        Columns =
        [
            Of(60, 30, 10, 15, 20, 25, 40, 55, 80, 105, 120, 140, 165, 195, 225, 260, 300),
            Of(75, 30, 10, 15, 20, 25, 40, 65, 95, 125, 145, 170, 195, 230, 265, 310, 360),
            Of(80, 30, 15, 20, 25, 35, 50, 70, 100, 130, 150, 175, 210, 245, 285, 330, 385),
            Of(90, 30, 20, 25, 30, 40, 55, 70, 100, 135, 155, 180, 210, 245, 285, 330, 385),
            Of(105, 30, 20, 25, 35, 45, 60, 80, 120, 160, 180, 210, 245, 285, 330, 385, 445),
            Of(125, 30, 25, 30, 40, 50, 70, 90, 125, 170, 195, 225, 265, 305, 355, 410, 475),

            // The rule takes nothing off 200 °C insulation in an engine space at 50 °C.
            Of(200, 50, 25, 35, 45, 55, 70, 100, 135, 180, 210, 240, 280, 325, 370, 430, 510),
        ],
        Bundles = [(3, 0.7), (4, 0.6), (7, 0.5), (25, 0.4)],
    };

    private static AmpacityColumn Of(double classCelsius, double baseCelsius, params double[] amps) => Column.Gauges(classCelsius, baseCelsius, Sizes, amps);
}
