namespace Loomwright.Sizing;

/// <summary>Current by mm².</summary>
internal static class MetricTables
{
    public static AmpacityRule Practice { get; } = new("metric practice", "vehicle instrument handbook after MIL-W-5088B and IEC", "read on a public page", "50 °C air, 105 °C conductor, one wire")
    {
        Columns = [Column.Metric(105, 50, "0.75 1 1.5 2.5 4 6 10", 10, 13.5, 16, 25, 32, 40, 63)],
        Bundles = [(2, 0.94), (3, 0.89), (4, 0.83), (5, 0.76)],
    };

    public static AmpacityRule Vehicle { get; } = new("vehicle practice", "vehicle-electrics page, largest current for a size", "read on a public page", "collector wires of a vehicle")
    {
        Columns = [Column.Metric(null, null, "0.5 0.75 1.5 2.5 6", 2.5, 2.5, 8, 16, 40)],
    };

    public static AmpacityRule PerArea { get; } = new("5 A per mm2", "the same vehicle-electrics page: 5 A/mm² for long, 10 A/mm² for short", "read on a public page", "a rule of thumb")
    {
        ProtectorShare = 2,
        Columns = [Column.Metric(null, null, "0.5 0.75 1 1.5 2.5 4 6 10", 2.5, 3.75, 5, 7.5, 12.5, 20, 30, 50)],
    };
}
