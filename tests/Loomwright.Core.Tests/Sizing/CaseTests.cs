using System.Globalization;
using Loomwright.Quantities;
using Loomwright.Sizing;
using static Loomwright.Tests.PublishedRows;

namespace Loomwright.Tests.Sizing;

/// <summary>2.5 mm² behind a 30 A fuse, tests/published/02-case-2p5mm2-behind-30A.csv: each verdict when its rule is the one chosen.</summary>
public sealed class CaseTests
{
    [Fact]
    public void Each_published_rule_gives_its_own_verdict_on_2_5_mm2_behind_30_A()
    {
        var rows = PublishedTable.Read("02-case-2p5mm2-behind-30A.csv").Rows;
        var told = rows.Where(r => Told(r) is not null).ToList();

        // The one row left out ties the fuse to the load and gives no verdict.
        Assert.Equal(rows.Count(r => r["verdict_30A"].Length > 0), told.Count);
        Each("02-case-2p5mm2-behind-30A.csv", told, SaysSo, row =>
        {
            var (rule, air, insulation) = Told(row)!.Value;
            var verdicts = insulation.Select(hot => AmpacityRules.Find(rule)!.For(new CrossSection(2.5), new Surroundings(new Temperature(air), new Temperature(hot)))!.Fuse.Amps >= 30 ? "accept" : "reject");
            Assert.Equal(row["verdict_30A"], string.Join(" / ", verdicts));
        });
    }

    private static bool SaysSo(PublishedRow row) => row["note"].Contains("memory", StringComparison.Ordinal);

    private static (string Rule, double Air, double[] Insulation)? Told(PublishedRow row) => row["rule"] switch
    {
        var r when r.StartsWith("33 CFR", StringComparison.Ordinal) => ("33 CFR 183.425", r.Contains("engine space", StringComparison.Ordinal) ? 50 : 30, [Before(r, " degC", last: true)]),
        "FAA AC 43.13-1B table 11-3" => ("FAA AC 43.13-1B table 11-3", 30, [105]),
        var r when r.StartsWith("FAA AC 43.13-1B table 11-9", StringComparison.Ordinal) => ("FAA AC 43.13-1B table 11-9", 70, [Before(r, " degC", last: true)]),
        "MIL-W-5088B single wire" => ("MIL-W-5088B single", 30, [105]),
        "MIL-W-5088B bundle" => ("MIL-W-5088B bundle", 30, [105]),
        var r when r.StartsWith("Space derating", StringComparison.Ordinal) => ("MIL-STD-975 single", 30, [200]),
        var r when r.StartsWith("Free-air code table", StringComparison.Ordinal) => ("US code free air", 30, [60, 75, 90]),
        var r when r.StartsWith("Metric table", StringComparison.Ordinal) => ("metric practice", 50, [105]),
        "Vehicle-practice table" => ("vehicle practice", 30, [105]),
        var r when r.StartsWith("Vehicle rule of thumb", StringComparison.Ordinal) => ("5 A per mm2", 30, [105]),
        _ => null,
    };

    private static double Before(string text, string unit, bool last) =>
        double.Parse(text[..(last ? text.LastIndexOf(unit, StringComparison.Ordinal) : text.IndexOf(unit, StringComparison.Ordinal))].Split(' ')[^1], CultureInfo.InvariantCulture);
}
