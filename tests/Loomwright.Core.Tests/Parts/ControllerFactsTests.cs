using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Tests.Simulation;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Parts;

public sealed class ControllerFactsTests
{
    [Fact]
    public void With_one_lamp_out_the_box_hurries_and_says_trouble()
    {
        var loom = Bench();
        var healthy = new Rig(loom).Now;
        Assert.Equal(Symbol.Flashing, healthy.Symbol("front"));
        Assert.False(healthy.Output("X1").LampOut);
        Assert.Equal(Symbol.Dark, healthy.Light("X1"));

        var out1 = new Rig(Patch.Apply(loom, new Fault.Dead("rear")), new RigOptions { Healthy = loom }).Now;
        Assert.Equal(Symbol.FlashingFast, out1.Symbol("front"));
        Assert.Equal(170, out1.Seen("front").FlashesPerMinute);
        Assert.True(out1.Output("X1").LampOut);
        Assert.Equal(Symbol.Lit, out1.Light("X1"));
        Assert.Equal(Symbol.Dark, out1.Symbol("rear"));
    }

    [Fact]
    public void Two_outputs_of_one_box_flash_each_at_its_own_rate()
    {
        var loom = Bench();
        var frame = new Rig(Patch.Apply(loom, new Fault.Dead("rear")), new RigOptions { Healthy = loom }).Now;
        Assert.Equal(Symbol.FlashingFast, frame.Symbol("front"));
        Assert.Equal(Symbol.Flashing, frame.Symbol("other"));
    }

    [Theory]
    [InlineData("open: supply one")]
    [InlineData("open: supply two")]
    [InlineData("open: ground one")]
    [InlineData("open: ground two")]
    public void A_box_with_two_supply_and_two_ground_leads_lives_on_either(string id)
    {
        var loom = Bench();
        var frame = new Rig(Patch.Apply(loom, FaultText.Read(id, loom).Fault!), new RigOptions { Healthy = loom }).Now;
        Assert.True(frame.Controllers.Single().Awake);
        Assert.Equal(Symbol.Flashing, frame.Symbol("front"));
    }

    [Fact]
    public void What_its_lights_do_at_power_up_is_told_and_changes_nothing()
    {
        var loom = Bench();
        var told = loom with { Parts = [.. loom.Parts.Select(p => p.Name == "box" ? p with { Settings = p.Settings.With("power-up show", new Value.Word("all lights on for a second")) } : p)] };
        Assert.Equal("all lights on for a second", Bike.Model(told.Part("box")!).Controller!.PowerUpShow);
        Assert.Equal(new Rig(loom).Now.Controllers.Single().Lights, new Rig(told).Now.Controllers.Single().Lights);
    }

    [Fact]
    public void A_tripped_output_says_trouble_too()
    {
        var loom = Bench(limitAmps: 1);
        Assert.Equal(OutputState.Tripped, new Rig(loom).Now.Output("X1").State);
        Assert.Equal(Symbol.Lit, new Rig(loom).Now.Light("X1"));
    }

    private static Loom Bench(double limitAmps = 10) => new Sketch().Battery()
        .Part("box", "load controller",
            ("plugs", Of(("P", Marks("B1", "B2", "G1", "G2")), ("X", Marks("X1", "X2")))), ("supply", Marks("B1", "B2")), ("ground", Marks("G1", "G2")),
            ("outputs", Of(
                ("left", Of(("terminal", "X1"), ("when", "blinking always"), ("limit", limitAmps), ("lamp out below", 2.5), ("on lamp out", "blinks fast"))),
                ("other", Of(("terminal", "X2"), ("when", "blinking always"))))),
            ("lights", Of(("X1", "trouble"))))
        .Part("front", "lamp", ("filament", 21.0)).Part("rear", "lamp", ("filament", 21.0)).Part("other", "lamp", ("filament", 5.0))
        .Wire("battery.+", "box.B1", "supply one").Wire("battery.+", "box.B2", "supply two").Wire("box.G1", "battery.-", "ground one").Wire("box.G2", "battery.-", "ground two")
        .Wires(("box.X1", "front.+"), ("front.-", "battery.-"), ("box.X1", "rear.+"), ("rear.-", "battery.-"), ("box.X2", "other.+"), ("other.-", "battery.-")).Loom;
}
