using Loomwright.Parts;
using static Loomwright.Tests.Parts.Given;

namespace Loomwright.Tests.Parts;

public sealed class BatteryTests
{
    [Fact]
    public void A_rested_lead_acid_battery_shows_the_published_voltage_of_its_charge()
    {
        // tests/published/07-ocv-lead-acid.csv, 5 % table: 0.02 V.
        foreach (var row in PublishedTable.Read("07-ocv-lead-acid.csv").Rows)
        {
            Assert.Equal(row.Number("ocv_V"), Emf("lead-acid", row.Number("state_of_charge_percent") / 100), 0.02);
        }
    }

    [Theory]
    [InlineData("lead-acid")]
    [InlineData("agm")]
    [InlineData("lifepo4")]
    public void A_fuller_battery_shows_more(string chemistry)
    {
        for (var percent = 1; percent <= 100; percent++)
        {
            Assert.True(Emf(chemistry, percent / 100.0) > Emf(chemistry, (percent - 1) / 100.0));
        }
    }

    [Fact]
    public void A_half_full_lithium_battery_rests_between_the_published_charts_that_contradict_each_other() =>
        // Chart A 3.20 V, chart C 3.33 V a cell at 50 %.
        Assert.InRange(Emf("lifepo4", 0.5), 4 * 3.20, 4 * 3.33);

    [Theory]
    [InlineData("lead-acid", 10, 0.016)]
    [InlineData("agm", 2, 0.020)]
    [InlineData("agm", 40, 0.008)]
    [InlineData("lifepo4", 4, 0.010)]
    [InlineData("lifepo4", 20, 0.004)]
    public void A_larger_battery_has_less_resistance_inside_the_usual_span(string chemistry, double ampHours, double ohms) =>
        Assert.Equal(ohms, Cells(Model("battery", ("chemistry", Word(chemistry)), ("capacity", Si(ampHours)))).SeriesOhms, 1e-9);

    [Fact]
    public void What_was_measured_goes_before_what_is_usual()
    {
        var cells = Cells(Model("battery", ("chemistry", Word("agm")), ("rest voltage", Si(12.31)), ("resistance", Si(0.05))));
        Assert.Equal((12.31, 0.05), (cells.EmfVolts, cells.SeriesOhms));
    }

    private static double Emf(string chemistry, double charge) => Cells(Model("battery", ("chemistry", Word(chemistry)), ("charge", Si(charge)))).EmfVolts;

    private static Source Cells(Model battery) => Assert.IsType<Source>(Assert.Single(battery.Elements).Curve);
}
