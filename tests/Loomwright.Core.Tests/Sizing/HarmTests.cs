using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Tests.Sizing;

/// <summary>What would burn or break is said where it would, and nowhere else.</summary>
public class HarmTests
{
    private static readonly Bike Bench = Bike.Read(new SourceText("kittiwake-bench", Repository.Read("examples/kittiwake-bench/kittiwake-bench.loom.yaml")));

    private static readonly Operation[] Ride =
    [
        new Operation.Set("lock", "riding"), new Operation.Set("front brake", "pressed"), new Operation.Set("left button", "pressed"),
    ];

    [Fact]
    public void The_healthy_bench_burns_nothing_with_everything_on() => Assert.All(Frames(Bench, null), f => Assert.Empty(Bench.Harm(f)));

    [Fact]
    public void Two_battery_posts_that_touch_are_a_short_and_said_to_be() =>
        Assert.StartsWith("battery.+ touches battery.-: a short", Harm("short: battery.+ to battery.-")[0], StringComparison.Ordinal);

    [Fact]
    public void A_box_with_plus_and_minus_exchanged_may_be_destroyed() => Assert.Contains(Harm("reversed: box"), h => h.StartsWith("box is fed the wrong way round", StringComparison.Ordinal));

    [Fact]
    public void A_battery_put_in_backwards_feeds_the_box_the_wrong_way_round() => Assert.Contains(Harm("swapped: battery.+ with battery.-"), h => h.StartsWith("box is fed the wrong way round", StringComparison.Ordinal));

    [Fact]
    public void A_thin_wire_behind_a_huge_fuse_passes_its_insulation_before_the_fuse_opens()
    {
        var bike = Bike.Read(new SourceText("thin", """
            loomwright: 1
            name: Thin wire
            parts:
              battery: {kind: battery, chemistry: agm, capacity: 10 Ah}
              fuse: {kind: fuse, rating: 100 A}
              lamp: {kind: lamp, filament: 55 W}
            wires:
              - {name: plus, from: battery.+, to: fuse.1, size: 2.5 mm2, length: 0.2 m}
              - {name: feed, from: fuse.2, to: lamp.+, size: 0.5 mm2, length: 1 m}
              - {name: return, from: lamp.-, to: battery.-, size: 0.5 mm2, length: 1 m}
            """));
        var shorted = bike.Fault("short: lamp.+ to lamp.-").Fault!;
        var harm = bike.Harm(bike.Start(shorted).Now, shorted);
        Assert.Contains(harm, h => h.StartsWith("feed (0.5 mm²) carries about", StringComparison.Ordinal));
        Assert.Contains(harm, h => h.StartsWith("return (0.5 mm²) carries about", StringComparison.Ordinal));
        Assert.Empty(bike.Harm(bike.Start().Now));
    }

    [Fact]
    public void A_supply_wire_on_the_wrong_side_of_the_main_fuse_is_found_although_nothing_looks_different() =>
        Assert.Contains(Bench.Check(Bench.Fault("moved: box supply end main fuse.2 to main fuse.1").Fault!), f => f.Code == "unfused-feed");

    [Theory]
    [InlineData("kittiwake")]
    [InlineData("small")]
    public void A_healthy_start_takes_seconds_and_burns_nothing(string bike)
    {
        var loom = bike == "small" ? Starting.Bike : Examples.Read("examples/kittiwake/kittiwake.loom.yaml");
        var frame = new Rig(loom).Play([new Operation.Set("lock", "riding"), new Operation.Set(bike == "small" ? "start button" : "thumb start", "pressed")])[^1];
        Assert.Equal(Symbol.Turns, frame.Seen.Single(s => s.Name == "starter").Symbol);
        Assert.True(frame.Phases[0].Wires.Max(w => Math.Abs(w.Current.Amps)) > 100);
        Assert.Empty(Loomwright.Sizing.Harm.Of(loom, frame));
    }

    [Fact]
    public void A_starter_cable_as_thin_as_a_lamps_burns_within_the_ten_seconds_of_a_start()
    {
        var cable = Starting.Bike.Wire("starter cable")!;
        var loom = Starting.Bike with { Wires = Starting.Bike.Wires.Replace(cable, cable with { Size = new(1.5) }) };
        var frame = new Rig(loom).Play([new Operation.Set("lock", "riding"), new Operation.Set("start button", "pressed")])[^1];
        Assert.Contains(Loomwright.Sizing.Harm.Of(loom, frame), h => h.StartsWith("starter cable", StringComparison.Ordinal) && h.Contains("within ten seconds", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("bundle: 1", "cool", false)]
    [InlineData("bundle: 8", "cool", true)]
    [InlineData("bundle: 1", "hot", true)]
    public void A_wire_in_a_bundle_or_at_a_hot_place_passes_its_insulation_at_less(string bundle, string heat, bool harmed)
    {
        // 240 W at 12 V: 21 A through 1.5 mm², which stands 22 A alone in cool air.
        var loom = Examples.Of($$"""
            loomwright: 1
            name: Sandpiper
            conditions: {ambient: 35 C, insulation: 105 C, {{bundle}} }
            places: { here: {name: here, heat: {{heat}} } }
            parts:
              battery: {kind: battery, chemistry: agm, place: here}
              main fuse: {kind: fuse, rating: 30 A, place: here}
              lamp: {kind: lamp, filament: 210 W, place: here}
            wires:
              - {name: plus, from: battery.+, to: main fuse.1, size: 6 mm2, length: 0.2 m}
              - {name: feed, from: main fuse.2, to: lamp.+, size: 1.5 mm2, length: 0.5 m}
              - {name: return, from: lamp.-, to: battery.-, size: 6 mm2, length: 0.5 m}
            """);
        Assert.Equal(harmed, Loomwright.Sizing.Harm.Of(loom, new Rig(loom).Now).Any(h => h.StartsWith("feed ", StringComparison.Ordinal)));
    }

    [Fact]
    public void Where_the_air_alone_passes_the_insulation_that_is_said_and_no_current_is_made_up()
    {
        var loom = Starting.Of("negative", conditions: "ambient: 70 C, insulation: 60 C");
        var harm = Assert.Single(Loomwright.Sizing.Harm.Of(loom, new Rig(loom).Do(new Operation.Set("lock", "riding"))));
        Assert.StartsWith("the air alone, 70 °C, passes the 60 °C that the insulation stands: fuse lead, ", harm, StringComparison.Ordinal);
    }

    private static List<string> Harm(string id)
    {
        var fault = Bench.Fault(id).Fault!;
        return [.. Frames(Bench, fault).SelectMany(f => Bench.Harm(f, fault))];
    }

    private static IReadOnlyList<Frame> Frames(Bike bike, Loomwright.Faults.Fault? fault) => bike.Start(fault).Play(Ride);
}
