using System.Globalization;
using Loomwright.Bench;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Sizing;
using static Loomwright.Tests.Parts.Given;
using static Loomwright.Tests.PublishedRows;

namespace Loomwright.Tests.Published;

/// <summary>Rules that tie a fuse to a wire, and what is usual of fuses: tests/published/02-protection-rules.csv and 04-fuse-practice.csv.</summary>
public sealed class ProtectionFigures
{
    private static readonly Surroundings Usual = new(new Temperature(30), new Temperature(105));

    [Fact]
    public void The_rules_for_a_fuse_before_a_wire_are_those_their_sources_print() =>
        Each("02-protection-rules.csv", PublishedTable.Read("02-protection-rules.csv").Rows, SaysMemory, row =>
        {
            switch (row["rule"])
            {
                case "protector rating / ampacity, circuits below 50 V":
                    Assert.Equal(Number(row["value"].Split(' ')[1]), Share("33 CFR 183.425"));
                    break;
                case "wire ampacity against protector rating":
                    Assert.Equal(Number(row["value"].Split(' ')[1]), Share("FAA AC 43.13-1B table 11-9"));
                    break;
                case "smallest separate conductor":
                    // 18 AWG inside a sheath is the thinnest row; the 16 AWG of a separate conductor is on the page of rows without a use.
                    Assert.Contains("18 AWG inside a sheath", row["source"], StringComparison.Ordinal);
                    Assert.Equal("18 AWG", AmpacityRules.Find("33 CFR 183.425")!.Columns[0].Rows[0].Name);
                    break;
                case "selectivity: the device nearest the fault clears first":
                    Assert.Null(Selectivity.LostFrom(FuseBand.Blade, 10, FuseBand.Blade, 30, 500));
                    Assert.NotNull(Selectivity.LostFrom(FuseBand.Blade, 30, FuseBand.Blade, 30, 500));
                    break;
                case "adiabatic k, copper, PVC 70 degC":
                    Assert.Equal(row.Number("value"), Heat.Adiabatic(new Temperature(70), new Temperature(160)), 1.0);
                    break;
                case "adiabatic k, copper, XLPE 90 degC":
                    Assert.Equal(row.Number("value"), Heat.Adiabatic(new Temperature(90), new Temperature(250)), 1.0);
                    break;
                case "adiabatic law":
                    // I²t = k²A² for the rise k is for; A the copper that is there, not the nominal size. The program's resistance is taken at the class and does not grow, so it may differ by a tenth.
                    var heat = Heat.Of(new CrossSection(2.5), new(new Temperature(70), new Temperature(105)), AmpacityRules.Usual);
                    var seconds = Math.Pow(Heat.Adiabatic(new Temperature(70), new Temperature(105)) * Copper.Resistivity / Conductor.For(new CrossSection(2.5)).Row.OhmsPerMetre / 1000, 2);
                    Assert.InRange((heat.After(new Temperature(70), 1000, seconds).Celsius - 70) / 35, 0.9, 1.1);
                    break;
                case "ambient law":
                    var cool = AmpacityRules.Find("33 CFR 183.425")!.For(new CrossSection(5.261), new(new Temperature(30), new Temperature(75)))!.Carries!.Value.Amps;
                    var warm = AmpacityRules.Find("33 CFR 183.425")!.For(new CrossSection(5.261), new(new Temperature(50), new Temperature(75)))!.Carries!.Value.Amps;
                    Assert.Equal(Math.Sqrt((75.0 - 50) / (75 - 30)), warm / cool, 1e-9);
                    break;
                case "conductor temperature estimate, conservative":
                    Assert.Equal(50 + (55 * Math.Sqrt(0.3)), Heat.Careful(new Temperature(50), new Temperature(105), 0.3).Celsius, 1e-9);
                    break;
                case "conductor temperature estimate, physical":
                    Assert.Equal(50 + (55 * 0.3 * 0.3), Heat.Of(new CrossSection(2.5), new(new Temperature(50), new Temperature(105)), AmpacityRules.Usual).Settled(25 * 0.3).Celsius, 1e-9);
                    break;
                default:
                    PublishedPage.SaysWhyNot("02-protection-rules.csv", row["rule"]);
                    break;
            }
        });

    [Fact]
    public void What_is_usual_of_fuses_is_what_the_program_takes() =>
        // Rows told as common practice or worked out from others count as not read.
        Each("04-fuse-practice.csv", PublishedTable.Read("04-fuse-practice.csv").Rows, row => !row["basis"].StartsWith("read", StringComparison.Ordinal), row =>
        {
            var numbers = row["value"].Split(' ').Select(w => double.TryParse(w, NumberStyles.Float, CultureInfo.InvariantCulture, out var n) ? n : (double?)null).OfType<double>().ToList();
            switch (row["item"])
            {
                case "continuous load / rating at 23 degC":
                    Assert.InRange(1 / BladeFuses.Margin, numbers[0], numbers[1]);
                    break;
                case "drop over a blade fuse at rated current":
                    Assert.All(Sold.Blades, r => Assert.InRange(r.Amps * StripOhms(r.Amps), numbers[0], numbers[1]));
                    break;
                case "drop and cold resistance, 40 A high-current fuse":
                    // Warm at its rating: 0.075 V / 40 A, cold 1.4 mΩ. One resistance stands for both here, within a factor of two.
                    Assert.InRange(StripOhms(40), numbers[1] / 2, 2 * numbers[0] / 40);
                    break;
                case "resistance estimate from rated drop":
                    Assert.All(Sold.Blades, r => Assert.Equal(0.1 / r.Amps, StripOhms(r.Amps), 1e-9));
                    break;
                case "inrush rule":
                    Assert.True(FuseBand.Blade.LeastSeconds(6) > Inrush.Seconds);
                    Assert.False(Inrush.MayOpen(FuseBand.Blade, 10, 59));
                    break;
                default:
                    PublishedPage.SaysWhyNot("04-fuse-practice.csv", row["item"]);
                    break;
            }
        });

    private static double StripOhms(double amps) => Assert.IsType<Ohms>(Assert.Single(Model("fuse", ("rating", Si(amps))).Elements).Curve).ResistanceOhms;

    private static double Share(string rule)
    {
        var allowed = AmpacityRules.Find(rule)!.For(new CrossSection(2.081), Usual)!;
        return allowed.Fuse.Amps / allowed.Carries!.Value.Amps;
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
