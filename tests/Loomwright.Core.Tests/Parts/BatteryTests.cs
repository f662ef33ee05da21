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

    [Theory]
    [InlineData("lead-acid", 10, 0.5, 0.38)]
    [InlineData("agm", 10, 1, 9.5)]
    [InlineData("lifepo4", 4, 0.5, 0.15)]
    [InlineData("lifepo4", 200, 0, 0.004)]
    public void A_battery_takes_less_the_fuller_it_is_and_rises_more_than_it_falls_when_it_delivers(string chemistry, double ampHours, double charge, double ohms)
    {
        var cells = Cells(Model("battery", ("chemistry", Word(chemistry)), ("capacity", Si(ampHours)), ("charge", Si(charge))));
        Assert.Equal(ohms, cells.ChargingOhms, 1e-9);
        Assert.Equal(0, cells.At(cells.EmfVolts).Amps);
        Assert.Equal(-2, cells.At(cells.EmfVolts - (2 * cells.SeriesOhms)).Amps, 1e-9);
        Assert.Equal(2, cells.At(cells.EmfVolts + (2 * ohms)).Amps, 1e-9);
    }

    /// <summary>A published test of one 105 Ah glass mat battery: it came to 14.4 V at 63.3 % with 0.4 of its capacity an hour, at 77.4 % with 0.2.</summary>
    [Theory]
    [InlineData(0.633, 0.4)]
    [InlineData(0.774, 0.2)]
    public void A_glass_mat_battery_comes_to_14_volts_4_about_where_one_was_measured_to(double charge, double ofCapacity)
    {
        var cells = Cells(Model("battery", ("chemistry", Word("agm")), ("capacity", Si(105)), ("charge", Si(charge))));
        Assert.Equal(ofCapacity, cells.At(14.4).Amps / 105, 0.03);
    }

    [Fact]
    public void A_measured_rest_voltage_tells_how_much_a_battery_takes()
    {
        var measured = Cells(Model("battery", ("chemistry", Word("agm")), ("rest voltage", Si(12.3))));
        Assert.Equal(0.38, measured.ChargingOhms, 1e-9);
    }

    private static double Emf(string chemistry, double charge) => Cells(Model("battery", ("chemistry", Word(chemistry)), ("charge", Si(charge)))).EmfVolts;

    private static Cells Cells(Model battery) => Assert.IsType<Cells>(Assert.Single(battery.Elements).Curve);
}
