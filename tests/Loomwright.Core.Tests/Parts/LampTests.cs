using Loomwright.Design;
using Loomwright.Parts;
using static Loomwright.Tests.Parts.Given;

namespace Loomwright.Tests.Parts;

public sealed class LampTests
{
    [Fact]
    public void A_21_watt_filament_takes_its_watts_at_12_volts_and_many_times_that_when_cold()
    {
        var light = Assert.Single(Model("lamp", ("filament", Si(21))).Elements);
        Assert.Equal(1.75, light.Curve.At(12).Amps, 1e-4);
        Assert.Equal(14, light.Cold!.At(12).Amps / light.Curve.At(12).Amps, 0.01);
        Assert.Equal(-1.75, light.Curve.At(-12).Amps, 1e-4);
    }

    [Theory]
    [InlineData("resistor")]
    [InlineData("driver")]
    public void An_LED_lamp_takes_its_watts_one_way_round_and_stays_dark_the_other(string drive)
    {
        var lamp = Model("lamp", ("led", Si(3)), ("led drive", Word(drive)));
        var light = Assert.Single(lamp.Elements);
        Assert.Equal(0.25, light.Curve.At(12).Amps, 0.0025);
        Assert.True(-light.Curve.At(-12).Amps < 0.01 * light.Curve.At(12).Amps);
        Assert.Equal(("+", "-"), lamp.Polarity);
    }

    [Fact]
    public void A_cluster_returns_all_its_elements_through_its_ground_lead()
    {
        var cluster = Model("lamp",
            ("leads", Words("tail", "stop", "plate", "ground")),
            ("lead colours", Group(("tail", Word("BK")), ("Stop", Word("WH")))),
            ("elements", Group(("tail", Group(("led", Si(0.4)))), ("stop", Group(("led", Si(3)))))),
            ("unused", Words("plate")));
        Assert.Empty(cluster.Problems);
        Assert.Equal([("tail", "ground"), ("stop", "ground")], cluster.Elements.Select(e => (e.From, e.To)));
        Assert.Equal(["tail", "stop"], cluster.Sights.Select(s => s.Name));
        Assert.Equal([Role.Plus, Role.Plus, Role.Lead, Role.Minus], cluster.Terminals.Select(t => t.Role));
        Assert.Null(cluster.Polarity);
    }

    public static TheoryData<string, string, string> Wrong() => new()
    {
        { "nothing", "it does not say what lights", "write filament: 21 W, led: 3 W or category: P21W" },
        { "both", "it is a filament and an LED at once", "keep one of the two, or name two elements" },
        { "lead", "there is no tall among the leads", "write tail" },
        { "three leads", "it has 3 leads and does not say what lies between them", "name the elements under elements" },
        { "colour", "there is no brake among the leads", "add brake to the leads, or write one of +, -" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_lamp_that_cannot_be_understood_says_why_and_what_to_write(string which, string what, string cure)
    {
        var model = which switch
        {
            "nothing" => Model("lamp"),
            "both" => Model("lamp", ("filament", Si(5)), ("led", Si(1))),
            "lead" => Model("lamp", ("leads", Words("tail", "ground")), ("elements", Group(("tall", Group(("led", Si(1))))))),
            "three leads" => Model("lamp", ("leads", Words("a", "b", "c")), ("led", Si(1))),
            _ => Model("lamp", ("led", Si(1)), ("lead colours", Group(("brake", Word("WH"))))),
        };
        var problem = Assert.Single(model.Problems);
        Assert.Equal((what, cure), (problem.What, problem.Cure));
    }
}
