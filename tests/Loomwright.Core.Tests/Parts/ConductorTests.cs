using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.Tests.Parts;

public sealed class ConductorTests
{
    private const double IacsOhmSquareMillimetresPerMetre = 0.017241;

    [Fact]
    public void Every_class_of_conductor_has_the_resistance_printed_in_IEC_60228()
    {
        // tests/published/01-iec60228-conductors.csv: exact.
        (string Column, ConductorTable Table)[] classes =
        [
            ("class5_6_plain_ohm_per_km", ConductorTable.Iec60228), ("class5_6_tinned_ohm_per_km", ConductorTable.Iec60228Tinned),
            ("class1_2_plain_ohm_per_km", ConductorTable.Iec60228Stiff), ("class2_tinned_ohm_per_km", ConductorTable.Iec60228StiffTinned),
        ];
        PublishedRows.Each("01-iec60228-conductors.csv", PublishedTable.Read("01-iec60228-conductors.csv").Rows, _ => false, row => Assert.All(
            classes.Where(c => row[c.Column].Length > 0),
            c => Assert.Equal(row.Number(c.Column), c.Table.Rows.Single(r => r.Size.SquareMillimetres == row.Number("area_mm2")).OhmsPerMetre * 1000, 1e-9)));
        if (PublishedTable.IsOurs)
        {
            Assert.All(classes, c => Assert.Equal(PublishedTable.Read("01-iec60228-conductors.csv").Rows.Count(r => r[c.Column].Length > 0), c.Table.Rows.Length));
        }
    }

    [Fact]
    public void Tinned_has_more_resistance_than_plain_and_flexible_more_than_stiff_up_to_35_mm2() =>
        Assert.All(ConductorTable.Iec60228Stiff.Rows.Where(r => r.Size.SquareMillimetres <= 35), stiff =>
        {
            double Of(ConductorTable table) => table.Rows.Single(r => r.Size == stiff.Size).OhmsPerMetre;
            Assert.True(Of(ConductorTable.Iec60228Tinned) > Of(ConductorTable.Iec60228) && Of(ConductorTable.Iec60228) > stiff.OhmsPerMetre);
            Assert.True(Of(ConductorTable.Iec60228StiffTinned) > stiff.OhmsPerMetre);
        });

    [Fact]
    public void Vehicle_cable_is_held_beside_the_rows_of_ISO_6722_1_we_remember() =>
        // tests/published/01-iso6722-1-conductors.csv: from memory but the row a published worked example corroborates.
        PublishedRows.Each("01-iso6722-1-conductors.csv", PublishedTable.Read("01-iso6722-1-conductors.csv").Rows, r => !r["note"].StartsWith("corroborated", StringComparison.Ordinal), row =>
            Assert.Equal(row.Number("R_max_mohm_per_m"), ConductorTable.Iso6722.Rows.Single(r => r.Size.SquareMillimetres == row.Number("area_mm2")).OhmsPerMetre * 1000, 1e-9));

    [Fact]
    public void Warm_copper_reads_higher_by_the_factors_of_IEC_60228()
    {
        // tests/published/01-iec60228-temperature-factors.csv: 0.001 absolute.
        var conductor = new Conductor(ConductorTable.Iec60228, ConductorTable.Iec60228.Rows[4], SizeMatch.Listed);
        var at20 = conductor.Of(new Length(1), new Temperature(20)).Ohms;
        PublishedRows.Each("01-iec60228-temperature-factors.csv", PublishedTable.Read("01-iec60228-temperature-factors.csv").Rows, _ => false, row =>
            Assert.Equal(row.Number("kt_published"), at20 / conductor.Of(new Length(1), new Temperature(row.Number("T_degC"))).Ohms, 0.001));
    }

    [Fact]
    public void Wire_gauge_follows_the_printed_table() =>
        // tests/published/01-awg-wire.csv: diameter 0.1 %, area 0.15 %, resistance 0.2 %.
        PublishedRows.Each("01-awg-wire.csv", PublishedTable.Read("01-awg-wire.csv").Rows, _ => false, row =>
        {
            var gauge = ConductorTable.Awg.Rows.Single(r => r.Name == $"{row["awg"]} AWG");
            Assert.Equal(1, Math.Sqrt(4 / Math.PI * gauge.Size.SquareMillimetres) / row.Number("diameter_mm"), 0.001);
            Assert.Equal(1, gauge.Size.SquareMillimetres / row.Number("area_mm2"), 0.0015);
            if (row["ohm_per_km_20degC"].Length > 0)
            {
                Assert.Equal(1, gauge.OhmsPerMetre * 1000 / row.Number("ohm_per_km_20degC"), 0.002);
            }
        });

    [Fact]
    public void Vehicle_cable_lies_2_to_15_percent_above_pure_copper_of_its_nominal_area()
    {
        // ISO 6722-1 from memory: plausibility only; 1.5 mm² is corroborated by a published worked example (0.0127 ohm/m).
        Assert.All(ConductorTable.Iso6722.Rows, r => Assert.InRange(r.OhmsPerMetre * r.Size.SquareMillimetres / IacsOhmSquareMillimetresPerMetre, 1.02, 1.15));
        Assert.Equal(0.0127, Conductor.Resistance(new CrossSection(1.5), new Length(1), new Temperature(20)).Ohms, 1e-9);
        Assert.Equal(25, ConductorTable.Iso6722.Rows.Length);
    }

    [Fact]
    public void A_thicker_wire_never_has_more_resistance() =>
        Assert.All(
            new[] { ConductorTable.Iso6722, ConductorTable.Iec60228, ConductorTable.Awg },
            table => Assert.Equal(table.Rows, [.. table.Rows.OrderBy(r => r.Size.SquareMillimetres).ThenByDescending(r => r.OhmsPerMetre)]));

    [Theory]
    [InlineData(0.5, "0.5 mm²", SizeMatch.Listed)]
    [InlineData(0.5176, "20 AWG", SizeMatch.Listed)]
    [InlineData(0.52, "20 AWG", SizeMatch.Listed)]
    [InlineData(0.6, "0.5 mm²", SizeMatch.NextThinner)]
    [InlineData(150, "95 mm²", SizeMatch.NextThinner)]
    [InlineData(0.1, "28 AWG", SizeMatch.NextThinner)]
    [InlineData(0.001, "40 AWG", SizeMatch.ThinnerThanAll)]
    public void A_size_no_table_lists_is_taken_as_the_next_thinner_one_and_says_so(double squareMillimetres, string row, SizeMatch match)
    {
        var conductor = Conductor.For(new CrossSection(squareMillimetres));
        Assert.Equal((row, match), (conductor.Row.Name, conductor.Match));
    }

    [Theory]
    [InlineData(null, 0.0005)]
    [InlineData("crimp pin", 0.0005)]
    [InlineData("ring M6", 0.0005)]
    [InlineData("bullet 4 mm", 0.005)]
    [InlineData("blade 6.3 mm", 0.0015)]
    [InlineData("blade 6,3mm", 0.0015)]
    [InlineData("pin 0.64 mm", 0.020)]
    public void An_end_counts_as_what_it_is_crimped_to(string? end, double ohms) =>
        // tests/published/08-contact-resistance.csv, SAE/USCAR-2 and IEC 60352-2 practice, from memory: defaults only.
        Assert.Equal(ohms, Termination.Of(end).Ohms);

    [Fact]
    public void A_metre_of_half_square_vehicle_cable_at_80_degrees_with_a_crimp_at_each_end()
    {
        var wire = new Wire("feed", new TerminalRef("a", "1"), new TerminalRef("b", "1"), new CrossSection(0.5), null, new Length(1), null, null);
        Assert.Equal((0.0371 * (1 + (0.00393 * 60))) + 0.001, Termination.Whole(wire, new Temperature(80)).Ohms, 1e-12);
    }
}
