using Loomwright.Simulation;
using Loomwright.Tests.Simulation;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Parts;

public sealed class GroundBodyTests
{
    [Fact]
    public void Through_a_head_bearing_the_headlamp_is_dim_and_a_wire_across_the_steering_cures_it()
    {
        // "Electrical grounding tips": no ground wire across the steering, return only through greasy head bearings.
        Assert.Equal(Symbol.Dim, new Rig(Steering(wired: false).Loom, new RigOptions { Healthy = Steering(wired: true).Loom }).Now.Symbol("headlamp"));
        Assert.Equal(Symbol.Lit, new Rig(Steering(wired: true).Loom).Now.Symbol("headlamp"));
    }

    [Fact]
    public void A_head_bearing_costs_what_its_page_says()
    {
        Assert.Contains("loses about 2 V", Pages.Read("docs/models/ground-body.md"), StringComparison.Ordinal);
        Assert.InRange(new Rig(Steering(wired: false).Loom).Now.Volts("fork"), 1.8, 2.4);
        Assert.InRange(new Rig(Steering(wired: true).Loom).Now.Volts("fork"), 0.02, 0.1);
    }

    [Theory]
    [InlineData("bolts", Symbol.Lit)]
    [InlineData("rubber", Symbol.Dark)]
    public void A_lamp_on_an_engine_in_rubber_has_no_ground(string through, Symbol seen)
    {
        var loom = new Sketch().Battery().Part("frame", "ground body")
            .Part("engine", "ground body", ("body", "engine"), ("joined to", "frame"), ("through", through))
            .Part("lamp", "lamp", ("filament", 21.0), ("mounted on", "engine"))
            .Wires(("battery.+", "lamp.+"), ("battery.-", "frame")).Loom;
        Assert.Equal(seen, new Rig(loom).Now.Symbol("lamp"));
    }

    [Fact]
    public void A_lamp_with_plastic_between_itself_and_the_frame_is_dark()
    {
        // "boat trailer rewired at home": one lamp not grounded through its mount.
        var loom = new Sketch().Battery().Part("frame", "ground body")
            .Part("left", "lamp", ("filament", 21.0), ("mounted on", "frame"))
            .Part("right", "lamp", ("filament", 21.0), ("leads", Marks("+", "body")))
            .Wires(("battery.+", "left.+"), ("battery.+", "right.+"), ("battery.-", "frame")).Loom;
        var frame = new Rig(loom).Now;
        Assert.Equal(Symbol.Lit, frame.Symbol("left"));
        Assert.Equal(Symbol.Dark, frame.Symbol("right"));
    }

    private static Sketch Steering(bool wired)
    {
        var bench = new Sketch().Battery().Part("frame", "ground body")
            .Part("fork", "ground body", ("body", "fork"), ("joined to", "frame"), ("through", "head bearing"))
            .Part("headlamp", "lamp", ("filament", 55.0), ("mounted on", "fork"))
            .Wires(("battery.+", "headlamp.+"), ("battery.-", "frame"));
        return wired ? bench.Wires(("fork", "frame")) : bench;
    }
}
