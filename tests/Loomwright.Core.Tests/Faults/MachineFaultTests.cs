using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Tests.Simulation;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Faults;

/// <summary>Faults of relays, flashers, ground bodies and sensor switches.</summary>
public sealed class MachineFaultTests
{
    private static readonly Loom Sample = new Sketch().Battery().Part("main fuse", "fuse", ("rating", 20.0))
        .Part("lock", "switch", ("terminals", Marks("a", "b")), ("positions", Of(("off", Pairs()), ("riding", Pairs(("a", "b"))))))
        .Part("horn button", "button").Part("neutral switch", "sensor switch", ("senses", "neutral"), ("mounted on", "engine"))
        .Part("relay", "relay", ("contacts", "changeover"), ("across coil", "diode")).Part("flasher", "flasher", ("works", "three terminal")).Part("breaker", "breaker", ("rating", 10.0))
        .Part("horn", "horn").Part("indicator", "lamp", ("filament", 21.0)).Part("neutral light", "tell-tale", ("filament", 3.0)).Part("headlamp", "lamp", ("filament", 55.0), ("mounted on", "fork"))
        .Part("frame", "ground body").Part("engine", "ground body", ("body", "engine"), ("joined to", "frame")).Part("fork", "ground body", ("body", "fork"), ("joined to", "frame"), ("through", "head bearing"))
        .Wires(
            ("battery.+", "main fuse.1"), ("main fuse.2", "lock.a"), ("lock.b", "breaker.1"), ("battery.-", "frame"), ("frame", "fork"),
            ("breaker.2", "horn button.1"), ("horn button.2", "relay.86"), ("relay.85", "frame"), ("breaker.2", "relay.30"), ("relay.87", "horn.1"), ("horn.2", "frame"),
            ("lock.b", "flasher.49"), ("flasher.49a", "indicator.+"), ("indicator.-", "frame"), ("flasher.31", "frame"),
            ("lock.b", "neutral light.+"), ("neutral light.-", "neutral switch.1"), ("lock.b", "headlamp.+"))
        .Loom;

    public static TheoryData<string> Every => [.. Catalogue.Of(Sample).Select(f => f.ToString()), "setting: flasher works thermal", "setting: fork resistance 20 ohm", "setting: relay contacts normally open", "leak: lock 12.5 ohm"];

    [Theory]
    [MemberData(nameof(Every))]
    public void Compiling_the_patched_design_equals_patching_the_compiled_design(string id)
    {
        var fault = FaultText.Read(id, Sample).Fault!;
        Assert.Equal(id, fault.ToString());
        FaultTests.HoldsTheLaw(Sample, fault);
    }

    [Theory]
    [InlineData("lost: headlamp", "headlamp", Symbol.Dark)]
    [InlineData("high: headlamp 2 ohm", "headlamp", Symbol.Dim)]
    [InlineData("high: lock.b to headlamp.+ 1 ohm", "headlamp", Symbol.Dim)]
    [InlineData("lost: neutral switch", "neutral light", Symbol.Dark)]
    [InlineData("stuck: neutral switch at in gear", "neutral light", Symbol.Dark)]
    [InlineData("stuck: relay at pulled in", "horn", Symbol.Sounds)]
    [InlineData("dead: flasher", "indicator", Symbol.Dark)]
    [InlineData("open: flasher.31 to frame", "indicator", Symbol.Dark)]
    [InlineData("setting: flasher works thermal", "indicator", Symbol.FlashingSlowly)]
    public void A_fault_shows_its_symptom_with_the_key_on(string id, string seen, Symbol symbol)
    {
        var rig = new Rig(Patch.Apply(Sample, FaultText.Read(id, Sample).Fault!), new RigOptions { Healthy = Sample });
        Assert.Equal(symbol, rig.Do(Set("lock", "riding")).Symbol(seen));
    }

    [Fact]
    public void Salt_water_across_the_lock_keeps_things_alive_with_the_key_off()
    {
        // "Motorcycles recalled for two electrical problems": corrosion bridges two lock terminals.
        var rig = new Rig(Patch.Apply(Sample, FaultText.Read("leak: lock 30 ohm", Sample).Fault!), new RigOptions { Healthy = Sample });
        Assert.InRange(rig.Now.Volts("lock.b"), 0.01, 6);
        Assert.InRange(rig.Now.Phases[0].Supply.Amps, 0.2, 0.45);
    }

    [Theory]
    [InlineData("high: lock.b to headlamp.+", "how many ohms it has cannot be read")]
    [InlineData("high: spoon 0.5 ohm", "no joint is called spoon")]
    [InlineData("stuck: lock at park", "lock has no position park")]
    [InlineData("stuck: horn at riding", "no switch is called horn")]
    [InlineData("leak: horn 30 ohm", "no part with contacts is called horn")]
    [InlineData("setting: flasher works backwards", "backwards cannot be works of flasher")]
    [InlineData("setting: flasher rat 90", "no setting of flasher is called rat 90")]
    public void What_cannot_be_read_is_said(string id, string what) =>
        Assert.StartsWith(what, FaultText.Read(id, Sample).Problem!.What, StringComparison.Ordinal);
}
