using System.Globalization;
using Loomwright.Parts;
using Loomwright.Sizing;
using static Loomwright.Tests.Parts.Given;
using static Loomwright.Tests.PublishedRows;

namespace Loomwright.Tests.Published;

/// <summary>Life, inrush and tungsten, tests/published/05-*.csv.</summary>
public sealed class LampFigures
{
    [Fact]
    public void A_headlamp_bulb_lasts_what_IEC_60810_prints() =>
        Each("05-lamp-life.csv", PublishedTable.Read("05-lamp-life.csv").Rows, _ => false, row =>
        {
            var ours = LampLife.Of(row["category"].Replace(" beam", "", StringComparison.Ordinal));
            Assert.Equal((row.Number("B3_h"), row.Number("Tc_h")), (ours?.B3Hours, ours?.TcHours));
            Assert.NotNull(LampCategory.Find(ours!.Category));
        });

    [Fact]
    public void A_standard_lamp_takes_at_its_test_voltage_no_more_than_its_category_allows() =>
        Each("05-lamp-categories.csv", PublishedTable.Read("05-lamp-categories.csv").Rows, row => !WattsWereRead(row), row =>
        {
            // Two-filament lamps have their figures either side of a stroke.
            var most = row["max_W_at_test_V"].Split('/').Select(Number).ToList();
            var carried = row["predicted_W_from_rated_at_12V"].Split('/').Select(Number).ToList();
            var filaments = LampCategory.All.Where(c => c.Name == row["category"] || c.Name.StartsWith(row["category"] + " ", StringComparison.Ordinal)).ToList();
            Assert.Equal(row["rated_W"].Split('/').Select(Number), filaments.Select(c => c.RatedWatts));
            Assert.Equal(most.Count, filaments.Count);
            Assert.All(filaments.Zip(most, carried), x =>
            {
                var (category, allowed, from12) = x;
                var watts = category.TestVolts * Assert.Single(Model("lamp", ("category", Word(category.Name))).Elements).Curve.At(category.TestVolts).Amps;
                Assert.Equal(row.Number("test_V"), category.TestVolts);
                Assert.Equal(allowed, category.MostWatts);
                Assert.True(watts <= allowed + 1e-3, category.Name);
                Assert.Equal(from12 <= allowed ? from12 : category.RatedWatts, watts, 0.01);
            });
        });

    [Fact]
    public void No_category_is_without_a_published_row() =>
        Assert.True(!PublishedTable.IsOurs || LampCategory.All.All(c => PublishedTable.Read("05-lamp-categories.csv").Rows.Any(r => c.Name == r["category"] || c.Name.StartsWith(r["category"] + " ", StringComparison.Ordinal))));

    [Fact]
    public void Current_light_and_life_of_a_filament_follow_the_published_exponents() =>
        Each("05-lamp-exponents.csv", PublishedTable.Read("05-lamp-exponents.csv").Rows, SaysMemory, row =>
        {
            var lamp = new Filament(21, 12);
            var current = Math.Log(lamp.At(13.2).Amps / lamp.At(12).Amps) / Math.Log(1.1);
            switch (row["quantity"].Split(", ")[0].Split(" exponent implied")[0], row["quantity"].Contains("implied by", StringComparison.Ordinal))
            {
                case ("current against voltage", _):
                    Assert.Equal(row.Number("exponent"), current, 1e-4);
                    break;
                case ("power against voltage", _):
                    // 1.55 follows from the current; 1.6 is printed.
                    Assert.Equal(row.Number("exponent"), current + 1, 0.051);
                    break;
                case ("flux against voltage", _):
                    Assert.Equal(Loomwright.Simulation.Light.FilamentExponent, row.Number("exponent"));
                    break;
                case ("life against voltage", _):
                    Assert.Equal(row.Number("exponent"), Math.Log(LampLife.Share(14.52, 13.2)) / Math.Log(1.1), 1e-9);
                    break;
                case (_, true):
                    // Implied by the two fluxes of the category: exact arithmetic, two places printed.
                    var words = row["quantity"].Split(", ")[1].Split(' ');
                    var category = PublishedTable.Read("05-lamp-categories.csv").Rows.Single(r => r["category"] == words[0]);
                    double Flux(string column) => Number(category[column].Split('/')[words is [_, "dipped"] ? 1 : 0]);
                    Assert.Equal(row.Number("exponent"), Math.Log(Flux("flux_lm") / Flux("reference_flux_12V_lm")) / Math.Log(1.1), 0.006);
                    break;
                default:
                    PublishedPage.SaysWhyNot("05-lamp-exponents.csv", row["quantity"]);
                    break;
            }
        });

    [Fact]
    public void A_cold_filament_is_that_of_the_books_and_of_the_notes_on_driving_lamps() =>
        Each("05-lamp-inrush.csv", PublishedTable.Read("05-lamp-inrush.csv").Rows, SaysMemory, row =>
        {
            // A 30 W headlamp: 12.0 V, 2.50 A hot, ratio 13.7 (College Physics 2e, ch. 20). Half of the last figure printed.
            var lamp = new Filament(30, 12, 13.7);
            var (value, usual) = (row["value"], new Filament(30, 12).HotOverCold);
            switch (row["item"].Split(',')[0].Split(" (")[0])
            {
                case "hot resistance of a 30 W headlamp at 12.0 V":
                    Assert.Equal(row.Number("value"), 12 / lamp.At(12).Amps, 0.005);
                    break;
                case "cold resistance of the same lamp":
                    Assert.Equal(row.Number("value"), lamp.Cold().ResistanceOhms, 0.0005);
                    break;
                case "inrush at 12.0 V from an ideal source":
                    Assert.Equal(row.Number("value"), lamp.Cold().At(12).Amps, 0.06);
                    break;
                case "steady current":
                    Assert.Equal(row.Number("value"), lamp.At(12).Amps, 0.005);
                    break;
                case "inrush ratio":
                    Assert.Equal(row.Number("value"), lamp.Cold().At(12).Amps / lamp.At(12).Amps, 0.05);
                    break;
                case "hot resistance by linear coefficient":
                    // 0.350 Ω at 20 °C, 4.5e-3, 2850 °C; the same lamp hot.
                    Assert.Equal(0.350 * (1 + (4.5e-3 * 2830)), row.Number("value"), 0.05);
                    Assert.Equal(row.Number("value"), 12 / lamp.At(12).Amps, 0.05);
                    break;
                case "typical inrush ratio":
                    Assert.Equal(row.Number("value"), usual);
                    break;
                case "inrush ratio span":
                    Assert.InRange(usual, Number(value.Split(" to ")[0]), Number(value.Split(" to ")[1]));
                    break;
                case "inrush decay":
                    Assert.Equal(Inrush.Seconds, Number(value.Split(' ')[^1]));
                    break;
                case "cold to hot resistance":
                    Assert.InRange(usual, 10, Number(value.Split('/')[1]));
                    break;
                default:
                    PublishedPage.SaysWhyNot("05-lamp-inrush.csv", row["item"]);
                    break;
            }
        });

    [Fact]
    public void The_resistance_of_a_filament_when_hot_is_that_of_tungsten_at_the_heat_of_a_lamp()
    {
        // T goes with V^0.42 (05-lamp-exponents.csv), 2900 K at rated volts from memory; hence the volts at which each row is reached.
        const double RatedKelvin = 2900;
        var rows = PublishedTable.Read("05-tungsten-resistance.csv").Rows;
        var lamp = new Filament(55, 12, Between(rows, RatedKelvin));
        Assert.InRange(new Filament(55, 12).HotOverCold / lamp.HotOverCold, 0.85, 1.15);
        Each("05-tungsten-resistance.csv", rows, _ => true, allFromMemory: true, check: row =>
        {
            var volts = 12 * Math.Pow(row.Number("T_K") / RatedKelvin, 1 / 0.42);
            Assert.InRange(volts / lamp.At(volts).Amps / lamp.Cold().ResistanceOhms / row.Number("R_over_R300"), 0.97, 1.03);
        });
    }

    private static bool WattsWereRead(PublishedRow row) =>
        row["basis"] == "read" || row["basis"].Contains("watt tolerance read", StringComparison.Ordinal) || row["basis"].Contains("same watts read", StringComparison.Ordinal);

    private static double Between(IReadOnlyList<PublishedRow> rows, double kelvin)
    {
        var (below, above) = (rows.Last(r => r.Number("T_K") <= kelvin), rows.First(r => r.Number("T_K") >= kelvin));
        var share = below == above ? 0 : (kelvin - below.Number("T_K")) / (above.Number("T_K") - below.Number("T_K"));
        return below.Number("R_over_R300") + (share * (above.Number("R_over_R300") - below.Number("R_over_R300")));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
