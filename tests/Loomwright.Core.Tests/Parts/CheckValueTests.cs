using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using static Loomwright.Tests.Parts.Given;

namespace Loomwright.Tests.Parts;

/// <summary>The check values that stand on the pages under docs/models/.</summary>
public sealed class CheckValueTests
{
    [Fact]
    public void A_fuse_of_15_amps_has_7_milliohms() =>
        Holds("fuse", "15 A: 6.67 mΩ", 0.00667, Only(Model("fuse", ("rating", Si(15)))).At(1).Amps is var amps ? 1 / amps : 0, 1e-5);

    [Fact]
    public void A_bench_supply_holds_its_volts_until_its_limit_and_then_its_amps()
    {
        var supply = Only(Model("bench supply"));
        Holds("bench-supply", "into 1 Ω: 5 A and 5 V", 5, -supply.At(5).Amps, 0.01);
        Holds("bench-supply", "into 10 Ω: 1.3 A", 1.3, -supply.At(13 - (0.010 * 1.3)).Amps, 0.01);
    }

    [Fact]
    public void A_horn_falls_silent_where_the_page_says()
    {
        var horn = Model("horn");
        var sounds = Assert.IsType<Sight.Horn>(Assert.Single(horn.Sights)).SoundsAboveAmps;
        Holds("horn", "silent below 2.4 A", 2.4, sounds, 1e-9);
        Holds("horn", "below 7.2 V", sounds, Only(horn).At(7.2).Amps, 1e-9);
    }

    [Fact]
    public void A_diode_conducts_one_way()
    {
        var diode = Only(Model("diode"));
        Holds("diode", "at −12 V 12 nA", -12e-9, diode.At(-12).Amps, 1e-9);
        Holds("diode", "at 0.8 V about 5 A", 5, diode.At(0.8).Amps, 0.2);
    }

    [Fact]
    public void A_battery_and_a_wire_have_the_resistance_on_their_page()
    {
        Holds("battery", "10 Ah: 16 mΩ", 0.016, Assert.IsType<Cells>(Only(Model("battery", ("chemistry", Word("lead-acid"))))).SeriesOhms, 1e-9);
        var wire = new Wire("feed", new TerminalRef("a", "1"), new TerminalRef("b", "1"), new CrossSection(0.5), null, new Length(1), null, null);
        Holds("wire", "38.1 mΩ", 0.0381, Termination.Whole(wire, new Temperature(20)).Ohms, 1e-9);
    }

    [Fact]
    public void An_output_that_is_off_and_unloaded_stands_below_a_volt()
    {
        var box = LoadControllerTests.Box();
        double Ohms(string name) => Assert.IsType<Ohms>(box.Elements.Single(e => e.Name == name).Curve).ResistanceOhms;
        var (leak, down) = (Ohms("stop lamp leakage"), Ohms("stop lamp pull down"));
        Holds("load-controller", "0.87 V", 0.87, 12 * down / (leak + down), 0.005);
    }

    private static Curve Only(Model model) => Assert.Single(model.Elements).Curve;

    private static void Holds(string page, string words, double expected, double actual, double tolerance)
    {
        Assert.Contains(words, Pages.Read($"docs/models/{page}.md"), StringComparison.Ordinal);
        Assert.Equal(expected, actual, tolerance);
    }
}
