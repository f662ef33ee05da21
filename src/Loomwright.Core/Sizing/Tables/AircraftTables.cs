namespace Loomwright.Sizing;

/// <summary>Aircraft and space: mostly for bundles, so mostly stricter than a vehicle needs.</summary>
internal static class AircraftTables
{
    private const string Mil = "MIL-W-5088B, as compiled on a public page";
    private const string MilBasis = "read; 10 AWG and thicker from memory";
    private const string MilSizes = "22 20 18 16 14 12 10 8 6";
    private const string Space = "EEE-INST-002 and MIL-STD-975, space derating";
    private const string SpaceSizes = "24 22 20 18 16 14 12 10 8 6 4 2 1/0 2/0";
    private const string BundleSizes = "24 22 20 18 16 14 12 10 8 6 4 2 1 1/0 2/0 3/0 4/0";

    public static AmpacityRule Fuses { get; } = new("FAA AC 43.13-1B table 11-3", "FAA AC 43.13-1B CHG 1, table 11-3", "read in the circular", "the largest protector for a wire; the wire stands more than its protector")
    {
        ListsProtectors = true,
        Columns =
        [
            Column.Gauges(null, null, "22 20 18 16 14 12 10 8 6 4 2 1 1/0",
                [5, 5, 10, 10, 15, 20, 30, 50, 70, 70, 100, 150, 150],
                [5, 7.5, 10, 15, 20, 30, 40, 50, 80, 100, 125, null, null]),
        ],
    };

    public static AmpacityRule Bundle { get; } = new("FAA AC 43.13-1B table 11-9", "FAA AC 43.13-1B CHG 1, table 11-9", "read in the circular", "70 °C air, a bundle of 33 wires, 18288 m")
    {
        Columns =
        [
            Column.Gauges(105, 70, BundleSizes, [2.5, 3, 4, 6, 7, 10, 13, 17, 38, 50, 68, 95, 113, 128, 147, 172, 204]),
            Column.Gauges(150, 70, BundleSizes, [4, 5, 7, 9, 11, 14, 19, 26, 57, 76, 103, 141, 166, 192, 222, 262, 310]),
            Column.Gauges(200, 70, BundleSizes, [5, 6, 9, 12, 14, 18, 25, 32, 71, 97, 133, 179, 210, 243, 285, 335, 395]),
        ],
    };

    public static AmpacityRule MilSingle { get; } = new("MIL-W-5088B single", Mil, MilBasis, "one wire in free air")
    {
        Columns = [Column.Gauges(null, null, MilSizes, [7, 11, 16, 22, 32, 41, 55, 73, 101], memory: "10 8 6")],
    };

    public static AmpacityRule MilBundle { get; } = new("MIL-W-5088B bundle", Mil, MilBasis, "wires in conduit or a bundle")
    {
        Columns = [Column.Gauges(null, null, MilSizes, [5, 7.5, 10, 13, 17, 23, 33, 46, 60], memory: "10 8 6")],
    };

    public static AmpacityRule SpaceSingle { get; } = new("MIL-STD-975 single", Space, "read on a public page", "one wire of 200 °C insulation")
    {
        Columns = [Column.Gauges(200, null, SpaceSizes, [3.3, 4.5, 6.5, 9.2, 13, 19, 25, 33, 44, 60, 81, 108, 147, 169])],
    };

    public static AmpacityRule SpaceBundle { get; } = new("MIL-STD-975 bundle", Space, "read on a public page", "bundled wires of 200 °C insulation")
    {
        Columns = [Column.Gauges(200, null, SpaceSizes, [2, 2.5, 3.7, 5, 6, 8, 12, 16, 23, 30, 40, 50, 75, 87])],
    };
}
