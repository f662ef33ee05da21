using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Tests.Simulation;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Parts;

public sealed class FlasherTests
{
    [Theory]
    [InlineData("thermal", Symbol.Flashing, Symbol.FlashingSlowly, Symbol.Lit)]
    [InlineData("load sensing", Symbol.Flashing, Symbol.FlashingFast, Symbol.FlashingFast)]
    [InlineData("three terminal", Symbol.Flashing, Symbol.Flashing, Symbol.Flashing)]
    public void Each_flasher_shows_a_missing_lamp_and_led_lamps_in_its_own_way(string works, Symbol both, Symbol one, Symbol leds)
    {
        Assert.Equal(both, Left(Bench(works), true, true));
        Assert.Equal(one, Left(Bench(works), true, false));
        Assert.Equal(leds, Left(Bench(works, ("led", 1.5)), true, true));
    }

    [Theory]
    [InlineData("thermal", 75, 95)]
    [InlineData("load sensing", 85, 85)]
    [InlineData("three terminal", 85, 85)]
    public void With_its_rated_load_it_flashes_within_what_is_asked_of_it(string works, double least, double most)
    {
        var rate = new Rig(Bench(works).Loom).Now.Seen("front").FlashesPerMinute!.Value;
        Assert.InRange(rate, least, most);
        Assert.InRange(rate, 60, 120);
    }

    [Fact]
    public void A_three_terminal_flasher_without_its_ground_is_dead()
    {
        var loom = Bench("three terminal").Loom;
        var lost = Patch.Apply(loom, new Fault.Open("flasher.31 to battery.-"));
        Assert.Equal(Symbol.Dark, new Rig(lost, new RigOptions { Healthy = loom }).Now.Symbol("front"));
    }

    [Fact]
    public void With_its_contact_closed_and_no_load_nothing_flashes_and_one_picture_is_enough() =>
        Assert.Single(new Rig(new Sketch().Battery().Part("flasher", "flasher", ("works", "thermal")).Wires(("battery.+", "flasher.49")).Loom).Now.Phases);

    [Fact]
    public void Two_flashers_each_keep_their_own_rate()
    {
        var bench = Bench("thermal", null, single: true)
            .Part("quick", "flasher", ("works", "load sensing")).Part("other", "lamp", ("filament", 21.0))
            .Wires(("battery.+", "quick.49"), ("quick.49a", "other.+"), ("other.-", "battery.-"));

        var frame = new Rig(bench.Loom).Now;

        Assert.Equal(Symbol.FlashingSlowly, frame.Symbol("front"));
        Assert.Equal(Symbol.FlashingFast, frame.Symbol("other"));
        Assert.Equal(170, frame.Seen("other").FlashesPerMinute);
    }

    private static Symbol Left(Sketch bench, bool front, bool rear)
    {
        var loom = bench.Loom;
        var broken = rear ? loom : Patch.Apply(loom, new Fault.Open("flasher.49a to rear.+"));
        var frame = new Rig(broken, new RigOptions { Healthy = loom }).Now;
        Assert.Equal(Outcome.Settled, frame.Outcome);
        return front ? frame.Symbol("front") : frame.Symbol("rear");
    }

    private static Sketch Bench(string works, (string, object)? light = null, bool single = false)
    {
        var lamp = light ?? ("filament", 21.0);
        var bench = new Sketch().Battery().Part("flasher", "flasher", ("works", works)).Part("front", "lamp", lamp)
            .Wires(("battery.+", "flasher.49"), ("flasher.49a", "front.+"), ("front.-", "battery.-"));
        bench = single ? bench : bench.Part("rear", "lamp", lamp).Wires(("flasher.49a", "rear.+"), ("rear.-", "battery.-"));
        return works == "three terminal" ? bench.Wires(("flasher.31", "battery.-")) : bench;
    }
}
