using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Tests.Simulation;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Parts;

public sealed class ButtonBlockTests
{
    [Theory]
    [InlineData("data lead", Symbol.Lit)]
    [InlineData("bus", Symbol.Lit)]
    [InlineData("resistor ladder", Symbol.Dark)]
    public void A_button_of_a_block_is_heard_and_only_a_ladder_loses_two_pressed_at_once(string by, Symbol both)
    {
        var rig = new Rig(Bench(by));
        Assert.Equal(Symbol.Dark, rig.Now.Symbol("one"));
        Assert.Equal(Symbol.Lit, rig.Do(Set("block left", "pressed")).Symbol("one"));
        Assert.Equal(Symbol.Dark, rig.Now.Symbol("two"));
        Assert.Equal(both, rig.Do(Set("block horn", "pressed")).Symbol("one"));
        Assert.Equal(both, rig.Now.Symbol("two"));
        Assert.Equal(Symbol.Lit, rig.Do(Set("block left", "released")).Symbol("two"));
        Assert.Equal(Outcome.Settled, rig.Now.Outcome);
    }

    [Theory]
    [InlineData("data lead", "open: data")]
    [InlineData("data lead", "open: block ground")]
    [InlineData("data lead", "open: block supply")]
    [InlineData("data lead", "short: box.D1 to battery.-")]
    [InlineData("data lead", "dead: block")]
    [InlineData("resistor ladder", "open: data")]
    [InlineData("resistor ladder", "open: block ground")]
    [InlineData("resistor ladder", "short: box.D1 to battery.-")]
    [InlineData("resistor ladder", "high: data 300 ohm")]
    [InlineData("bus", "open: data")]
    [InlineData("bus", "open: second")]
    [InlineData("bus", "swapped: box.D1 with box.D2")]
    [InlineData("bus", "open: block ground")]
    public void A_block_that_is_not_connected_is_not_heard(string by, string id)
    {
        var loom = Bench(by);
        var rig = new Rig(Patch.Apply(loom, FaultText.Read(id, loom).Fault!), new RigOptions { Healthy = loom });
        Assert.Equal(Symbol.Dark, rig.Do(Set("block left", "pressed")).Symbol("one"));
    }

    [Theory]
    [InlineData("data lead")]
    [InlineData("resistor ladder")]
    [InlineData("bus")]
    public void Patching_and_compiling_a_block_commute(string by)
    {
        var loom = Bench(by);
        Assert.All(Catalogue.Of(loom), fault => Faults.FaultTests.HoldsTheLaw(loom, fault));
    }

    [Fact]
    public void A_bus_measures_60_ohms_between_its_pair_with_power_off()
    {
        Assert.Contains("Bus, power off: 60 Ω", Pages.Read("docs/models/button-block.md"), StringComparison.Ordinal);
        Assert.Equal(60, new Rig(Bench("bus")).Ohms(At("box.D1"), At("box.D2"))!.Value.Ohms, 0.2);
        var loom = Bench("bus");
        Assert.Equal(120, new Rig(Patch.Apply(loom, new Fault.Open("data"))).Ohms(At("box.D1"), At("box.D2"))!.Value.Ohms, 0.2);
    }

    [Fact]
    public void A_ladders_first_button_stands_where_its_page_says()
    {
        Assert.Contains("3.13 V of 12.6 V", Pages.Read("docs/models/button-block.md"), StringComparison.Ordinal);
        Assert.Equal(3.13, new Rig(Bench("resistor ladder")).Do(Set("block left", "pressed")).Volts("box.D1"), 0.02);
    }

    [Fact]
    public void A_button_input_without_a_data_terminal_is_a_problem_with_its_cure()
    {
        var problem = Assert.Single(Given.Model("load controller",
            ("plugs", Of(("P", Marks("+", "-"))) is var plugs ? new Value.Group(plugs) : null!), ("supply", Given.Word("+")), ("ground", Given.Word("-")),
            ("inputs", new Value.Group(Of(("left", Of(("button", 1.0))))))).Problems);
        Assert.Equal("inputs/left/button", problem.Path);
        Assert.StartsWith("write data:", problem.Cure, StringComparison.Ordinal);
    }

    private static Loom Bench(string by)
    {
        var bus = by == "bus";
        var bench = new Sketch().Battery()
            .Part("block", "button block", ("reports by", by), ("buttons", Marks("left", "right", "horn")))
            .Part("box", "load controller",
                ("plugs", Of(("P", Marks("B+", "B-")), ("D", Marks("D1", "D2")), ("X", Marks("X1", "X2")))), ("supply", "B+"), ("ground", "B-"),
                ("data", Of(("terminal", "D1"), ("second terminal", "D2"), ("reads", by))),
                ("inputs", Of(("left", Of(("button", 1.0))), ("horn", Of(("button", 3.0))))),
                ("outputs", Of(("one", Of(("terminal", "X1"), ("when", "left"))), ("two", Of(("terminal", "X2"), ("when", "horn"))))))
            .Part("one", "lamp", ("filament", 5.0)).Part("two", "lamp", ("filament", 5.0))
            .Wires(("battery.+", "box.B+"), ("box.B-", "battery.-"), ("box.X1", "one.+"), ("one.-", "battery.-"), ("box.X2", "two.+"), ("two.-", "battery.-"))
            .Wire("block.-", "battery.-", "block ground")
            .Wire("box.D1", bus ? "block.high" : "block.data", "data");
        bench = by == "resistor ladder" ? bench : bench.Wire("battery.+", "block.+", "block supply");
        return (bus ? bench.Wire("box.D2", "block.low", "second") : bench).Loom;
    }
}
