using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Tests.Simulation;
using static Loomwright.Tests.Parts.Given;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Parts;

public sealed class SmallKindTests
{
    [Theory]
    [InlineData("load", "12 Ω", 12)]
    [InlineData("ignition coil", "3.43 Ω", 3.43)]
    [InlineData("injection unit", "6 Ω", 6)]
    [InlineData("fuel pump", "3 Ω", 3)]
    [InlineData("fan", "1.71 Ω", 1.71)]
    [InlineData("heated grips", "4 Ω", 4)]
    [InlineData("air horn", "0.667 Ω", 0.667)]
    [InlineData("starter", "83.3 mΩ", 0.0833)]
    public void A_load_has_the_resistance_on_its_page(string kind, string words, double ohms)
    {
        Assert.Contains(words, Pages.Read($"docs/models/{kind.Replace(' ', '-')}.md"), StringComparison.Ordinal);
        Assert.Equal(ohms, Assert.IsType<Ohms>(Assert.Single(Model(kind).Elements).Curve).ResistanceOhms, ohms * 0.003);
    }

    [Theory]
    [InlineData("load", Symbol.Works, 5)]
    [InlineData("fuel pump", Symbol.Turns, 4)]
    [InlineData("air horn", Symbol.Sounds, 6)]
    public void A_load_works_at_full_volts_and_is_told_to_rest_below_its_share(string kind, Symbol works, double restVolts)
    {
        Symbol At(double volts) => new Rig(new Sketch().Battery(volts, 0.0005).Part("it", kind).Wires(("battery.+", "it.+"), ("it.-", "battery.-")).Loom).Now.Symbol("it");
        Assert.Equal(works, At(12));
        Assert.Equal(works == Symbol.Sounds ? Symbol.Silent : Symbol.Rests, At(restVolts));
    }

    [Fact]
    public void An_empty_socket_takes_nothing_and_a_used_one_what_is_plugged_in()
    {
        Assert.Empty(Model("socket").Elements);
        Assert.Equal(2, Assert.Single(Model("socket", ("takes", Si(2))).Elements).Curve.At(12).Amps, 6);
    }

    [Fact]
    public void A_connector_joins_each_cavity_through_its_terminal_size()
    {
        var model = Model("connector", ("cavities", Words("1", "2")), ("terminal size", Si(0.0063)));
        Assert.Equal(["1a", "2a", "1b", "2b"], model.Terminals.Select(t => t.Mark));
        Assert.All(model.Elements, e => Assert.Equal(0.0015, Assert.IsType<Ohms>(e.Curve).ResistanceOhms));
    }

    [Fact]
    public void A_breaker_opens_stays_open_and_is_closed_by_its_button_once_the_overload_is_gone()
    {
        var rig = new Rig(Overload("by hand").Loom);
        Assert.Equal(Symbol.Works, rig.Now.Symbol("small"));
        var opened = rig.Do(Set("heavy switch", "pressed"));
        Assert.Equal(FuseState.Blown, opened.Fuse("breaker"));
        Assert.Contains("breaker opened", Assert.Single(opened.Events), StringComparison.Ordinal);
        Assert.Equal(FuseState.Blown, rig.Do(Set("breaker", "pressed")).Fuse("breaker"));
        rig.Do(Set("breaker", "in"));
        rig.Do(Set("heavy switch", "released"));
        Assert.Equal(FuseState.Blown, rig.Now.Fuse("breaker"));
        Assert.Equal(FuseState.Whole, rig.Do(Tap("breaker")).Fuse("breaker"));
        Assert.Equal(Symbol.Works, rig.Now.Symbol("small"));
    }

    [Fact]
    public void A_breaker_that_closes_by_itself_makes_the_lamps_behind_it_flash_slowly()
    {
        var rig = new Rig(Overload("by itself").Part("lamp", "lamp", ("filament", 5.0)).Wires(("breaker.2", "lamp.+"), ("lamp.-", "battery.-")).Loom);
        Assert.Equal(Symbol.Lit, rig.Now.Symbol("lamp"));
        var frame = rig.Do(Set("heavy switch", "pressed"));
        Assert.Equal(FuseState.Cycling, frame.Fuse("breaker"));
        Assert.Equal(Symbol.FlashingSlowly, frame.Symbol("lamp"));
        Assert.Equal(FuseState.Whole, rig.Do(Set("heavy switch", "released")).Fuse("breaker"));
    }

    private static Sketch Overload(string resets) => new Sketch().Battery().Part("breaker", "breaker", ("rating", 10.0), ("resets", resets))
        .Part("small", "load").Part("heavy switch", "button").Part("heavy", "load", ("current", 18.0))
        .Wires(("battery.+", "breaker.1"), ("breaker.2", "small.+"), ("small.-", "battery.-"), ("breaker.2", "heavy switch.1"), ("heavy switch.2", "heavy.+"), ("heavy.-", "battery.-"));
}
