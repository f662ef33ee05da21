using System.Collections.Immutable;

namespace Loomwright.Sizing;

/// <summary>Rules for buildings: kept because owners meet them, and for their law of the air around.</summary>
internal static class BuildingTables
{
    private const string Iec = "IEC 60364-5-52 table B.52, 70 °C insulation";
    private const string IecBasis = "read in a public instruction book that reproduces it; bundle shares from memory";
    private const string Sizes = "14 12 10 8 6 4 2";
    private const string SizesDownTo20 = "20 18 16 " + Sizes;

    private static readonly ImmutableArray<(int, double)> Grouped =
        [(2, 0.8), (3, 0.7), (4, 0.65), (5, 0.6), (6, 0.57), (7, 0.54), (8, 0.52), (9, 0.5), (12, 0.45), (16, 0.41), (20, 0.38)];

    public static AmpacityRule Enclosed { get; } = new("IEC 60364-5-52 B2", Iec, IecBasis, "30 °C air, cable in a tube on a wall")
    {
        Columns = [Column.Metric(70, 30, "1.5 2.5 6 16", 15, 20, 34, 62)],
        Bundles = Grouped,
    };

    public static AmpacityRule OnSurface { get; } = new("IEC 60364-5-52 C", Iec, IecBasis, "30 °C air, cable on a wall")
    {
        Columns = [Column.Metric(70, 30, "1.5 2.5 6 16", 17, 24, 41, 76)],
        Bundles = Grouped,
    };

    public static AmpacityRule FreeAir { get; } = new("US code free air", "Lessons in Electric Circuits, volume I, after the US National Electrical Code", "read; the source calls 20 to 16 AWG an estimate", "30 °C air, one wire in free air")
    {
        Columns =
        [
            Column.Gauges(60, 30, SizesDownTo20, [9, 13, 18, 25, 30, 40, 60, 80, 105, 140]),
            Column.Gauges(75, 30, Sizes, [30, 35, 50, 70, 95, 125, 170]),
            Column.Gauges(90, 30, SizesDownTo20, [12.5, 18, 24, 35, 40, 55, 80, 105, 140, 190]),
        ],
    };
}
