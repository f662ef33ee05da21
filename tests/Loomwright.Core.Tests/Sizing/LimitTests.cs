using System.Globalization;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Sizing;
using static Loomwright.Tests.PublishedRows;

namespace Loomwright.Tests.Sizing;

public sealed class LimitTests
{
    [Fact]
    public void Every_drop_limit_is_quoted_as_its_source_has_it() =>
        Each("03-voltage-drop-limits.csv", PublishedTable.Read("03-voltage-drop-limits.csv").Rows, SaysMemory, row =>
        {
            var limit = Assert.Single(DropLimit.All, l => l.Circuit == row["circuit"] && l.Source == row["source"]);
            var scale = limit.Unit == DropUnit.Share ? 100 : 1;
            Assert.Equal(double.Parse(row["limit"].Split(' ')[0], CultureInfo.InvariantCulture), limit.Limit * scale, 1e-9);
            Assert.Equal(row["span"], limit.Span);
            Assert.Equal(row["unit"][0], limit.Unit switch { DropUnit.Volts => 'V', DropUnit.Ohms => 'o', _ => '%' });
            Assert.Equal(row["basis"].StartsWith("read", StringComparison.Ordinal), !limit.FromMemory);
        });

    [Fact]
    public void A_size_by_drop_is_within_one_step_of_the_boat_table()
    {
        // 03-awg-by-3-percent-drop.csv: 12 V, 3 %, total length; one listed size either way.
        string[] listed = ["18", "16", "14", "12", "10", "8", "6", "4", "2", "1", "1/0", "2/0"];
        var rows = listed.Select(g => ConductorTable.Awg.Rows.Single(r => r.Name == $"{g} AWG")).ToList();
        Each("03-awg-by-3-percent-drop.csv", PublishedTable.Read("03-awg-by-3-percent-drop.csv").Rows, _ => false, row =>
        {
            var thinnest = DropLimit.Thinnest(rows, new Current(row.Number("current_A")), new Length(row.Number("length_m")), new Voltage(0.36))!;
            Assert.InRange(rows.IndexOf(thinnest) - Array.IndexOf(listed, row["awg_published"]), -1, 1);
        });
    }

    [Fact]
    public void A_push_on_terminal_usually_carries_what_practice_says() =>
        Each("08-blade-terminals.csv", PublishedTable.Read("08-blade-terminals.csv").Rows, _ => false, row =>
            Assert.Contains(new Tab(row.Number("tab_width_mm"), row.Number("tab_thickness_mm"), row.Number("I_low_A"), row.Number("I_high_A")), Tab.All));

    [Theory]
    [InlineData("blade 6.3 mm", 32.0)]
    [InlineData("blade 2,8 mm", 6.0)]
    [InlineData("ring M6", null)]
    [InlineData(null, null)]
    public void An_end_that_is_a_blade_is_known_by_its_width(string? end, double? most) => Assert.Equal(most, Tab.Of(end)?.MostAmps);
}
