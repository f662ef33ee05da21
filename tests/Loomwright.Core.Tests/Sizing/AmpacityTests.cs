using System.Globalization;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Sizing;
using static Loomwright.Tests.PublishedRows;

namespace Loomwright.Tests.Sizing;

/// <summary>The rules against the published tables, tests/published/02-*.csv: exact unless said otherwise.</summary>
public sealed class AmpacityTests
{
    [Fact]
    public void The_boat_rule_carries_what_33_CFR_183_425_prints_for_each_class_of_insulation() =>
        Each("02-us-33cfr183-ampacity.csv", Rows("02-us-33cfr183-ampacity.csv"), _ => false, row =>
            Assert.All(["60", "75", "80", "90", "105", "125", "200"], hot => Assert.Equal(row.Number($"I_A_{hot}degC"), Carries("33 CFR 183.425", Gauge(row), 30, Number(hot)))));

    [Fact]
    public void In_an_engine_space_the_boat_rule_takes_off_what_its_note_says()
    {
        // 0.01 absolute; nothing off for 200 °C. The factors are from memory.
        var rule = AmpacityRules.Find("33 CFR 183.425")!;
        Each("02-us-33cfr183-correction.csv", Rows("02-us-33cfr183-correction.csv").Where(r => r["parameter"] == "insulation_class_degC"), SaysMemory, allFromMemory: true, check: row =>
        {
            var hot = row.Number("parameter_value");
            Assert.Equal(row.Number("factor_published"), Carries(rule.Name, "10 AWG", 50, hot) / Carries(rule.Name, "10 AWG", 30, hot), 0.01);
        });
        Each("02-us-33cfr183-correction.csv", Rows("02-us-33cfr183-correction.csv").Where(r => r["parameter"] == "count"), SaysMemory, allFromMemory: true, check: row =>
            Assert.Equal(row.Number("factor_published"), rule.BundleShare(int.Parse(row["parameter_value"].Split(' ')[0], CultureInfo.InvariantCulture))));
    }

    [Fact]
    public void Warmer_air_leaves_less_by_the_law_of_IEC_60364() =>
        Each("02-ambient-correction-70degC.csv", Rows("02-ambient-correction-70degC.csv"), _ => false, row =>
        {
            // 0.7 A absolute: the source prints whole amperes.
            Assert.All(["30", "40", "45", "50", "55"], air =>
                Assert.Equal(row.Number($"I_A_ambient_{air}degC"), Carries($"IEC 60364-5-52 {row["method"]}", $"{row["area_mm2"]} mm²", Number(air), 70), 0.7));
        });

    [Fact]
    public void A_bundled_aircraft_wire_carries_and_resists_what_table_11_9_prints() =>
        Each("02-faa-table-11-9.csv", Rows("02-faa-table-11-9.csv"), _ => false, row =>
        {
            Assert.All(["105", "150", "200"], hot => Assert.Equal(row.Number($"I_A_{hot}degC"), Carries("FAA AC 43.13-1B table 11-9", Gauge(row), 70, Number(hot))));
            Assert.Equal(row.Number("ohm_per_1000ft_source"), ConductorTable.Aircraft.Rows.Single(r => r.Name == Gauge(row)).OhmsPerMetre * 304.8, 1e-9);
        });

    [Fact]
    public void The_largest_protector_for_an_aircraft_wire_is_the_one_table_11_3_prints() =>
        Each("02-faa-table-11-3.csv", Rows("02-faa-table-11-3.csv"), _ => false, row =>
        {
            var allowed = Allowed("FAA AC 43.13-1B table 11-3", Gauge(row), 30, 105)!;
            Assert.Equal(row.Number("fuse_A"), allowed.Fuse.Amps);
            Assert.Null(allowed.Carries);
            if (row["breaker_A"].Length > 0)
            {
                Assert.Equal(row.Number("breaker_A"), allowed.Breaker.Amps);
            }
        });

    [Fact]
    public void Single_and_bundled_wires_carry_what_three_tables_print() =>
        Each("02-single-and-bundle-ampacity.csv", Rows("02-single-and-bundle-ampacity.csv"), SaysMemory, row =>
        {
            var (rule, hot) = row["table"].Split(' ')[0] switch
            {
                "MIL-W-5088B" => ("MIL-W-5088B ", 105),
                "NASA" => ("MIL-STD-975 ", 200),
                _ => ("US code free air", int.Parse(row["table"].Split(", ")[1].Split(' ')[0], CultureInfo.InvariantCulture)),
            };
            var kinds = rule.EndsWith(' ') ? (rule + "single", rule + "bundle") : (rule, rule);
            Assert.Equal(row.Number("I_single_A"), Carries(kinds.Item1, Gauge(row), 30, hot));
            if (row["I_bundle_A"].Length > 0)
            {
                Assert.Equal(row.Number("I_bundle_A"), Carries(kinds.Item2, Gauge(row), 30, hot));
            }

            Assert.Equal(SaysMemory(row), Allowed(kinds.Item1, Gauge(row), 30, hot)!.FromMemory);
        });

    [Fact]
    public void A_metric_wire_carries_what_each_practice_prints() =>
        Each("02-metric-ampacity.csv", Rows("02-metric-ampacity.csv"), _ => false, row =>
        {
            var size = row.Number("area_mm2").ToString(CultureInfo.InvariantCulture) + " mm²";
            foreach (var (column, rule) in new[] { ("ambient50_105_A", "metric practice"), ("vehicle_rule_A", "vehicle practice"), ("five_A_per_mm2_A", "5 A per mm2") })
            {
                if (row[column].Length > 0)
                {
                    Assert.Equal(row.Number(column), Carries(rule, size, 50, 105));
                }
            }

            Assert.Equal(row.Number("ten_A_per_mm2_short_A"), Allowed("5 A per mm2", size, 50, 105)!.Fuse.Amps);
        });

    [Fact]
    public void A_bundle_takes_off_what_the_metric_handbook_prints_beside_its_table() =>
        // The comment of 02-metric-ampacity.csv: 2 wires 0.94, 3 wires 0.89, 4 wires 0.83, 5 wires 0.76.
        Assert.Equal([1, 0.94, 0.89, 0.83, 0.76, 0.76], Enumerable.Range(1, 6).Select(AmpacityRules.Usual.BundleShare));

    [Fact]
    public void The_laws_for_free_air_bundles_and_altitude_pass_the_points_of_the_circulars_curves() =>
        Each("02-faa-derating-points.csv", Rows("02-faa-derating-points.csv"), SaysMemory, row =>
        {
            // 5 % where the point was read, 10 % where it is from memory.
            var given = row["parameter_value"].Replace(" %", "", StringComparison.Ordinal).Split(';');
            var now = row["curve"] switch
            {
                "altitude factor" => FreeAir.AltitudeShare(Number(given[0])),
                "bundle factor" => FreeAir.BundleShare((int)Number(given[0]), Number(given[1]) / 100),
                _ => FreeAir.Amps(Size($"{given[0]} AWG").SquareMillimetres, Number(given[1])),
            };
            Assert.InRange(now / row.Number("value"), SaysMemory(row) ? 0.9 : 0.95, SaysMemory(row) ? 1.1 : 1.05);
        });

    [Theory]
    [InlineData("metric practice", "4 mm²", "4 mm²")]
    [InlineData("33 CFR 183.425", "2.5 mm²", "14 AWG")]
    [InlineData("33 CFR 183.425", "0.75 mm²", null)]
    [InlineData("metric practice", "0.5 mm²", null)]
    [InlineData("metric practice", "25 mm²", null)]
    [InlineData("MIL-STD-975 single", "2.5 mm²", null)]
    public void A_size_a_rule_does_not_list_is_read_one_gauge_thinner_or_not_at_all(string rule, string size, string? taken) =>
        Assert.Equal(taken, Allowed(rule, size, 30, 105)?.SizeTaken);

    [Fact]
    public void Cooler_air_than_its_table_never_makes_a_rule_allow_more() =>
        Assert.All(AmpacityRules.All, r => Assert.Equal(r.For(new CrossSection(2.5), new(new(20), new(200))), r.For(new CrossSection(2.5), new(new(-10), new(200)))));

    private static IReadOnlyList<PublishedRow> Rows(string file) => PublishedTable.Read(file).Rows;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Gauge(PublishedRow row) => $"{row["awg"]} AWG";

    private static CrossSection Size(string size) => size.EndsWith(" AWG", StringComparison.Ordinal)
        ? ConductorTable.Awg.Rows.Single(r => r.Name == size).Size
        : new CrossSection(double.Parse(size.Split(' ')[0], CultureInfo.InvariantCulture));

    private static Allowance? Allowed(string rule, string size, double air, double insulation) =>
        AmpacityRules.Find(rule)!.For(Size(size), new Surroundings(new Temperature(air), new Temperature(insulation)));

    private static double Carries(string rule, string size, double air, double insulation) => Allowed(rule, size, air, insulation)!.Carries!.Value.Amps;
}
