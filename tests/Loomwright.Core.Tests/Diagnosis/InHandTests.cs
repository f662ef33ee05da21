using Loomwright.Design;
using Loomwright.Diagnosis;

namespace Loomwright.Tests.Diagnosis;

/// <summary>What comes off before hands go to a thing: the main fuse where that takes the battery away from it, else minus.</summary>
public sealed class InHandTests
{
    private static readonly Loom Bike = Examples.Of("""
        loomwright: 1
        name: Turnstone
        parts:
          battery: {kind: battery, chemistry: agm}
          plug: {kind: connector, cavities: [1, 2]}
          main fuse: {kind: fuse, rating: 20 A}
          second fuse: {kind: fuse, rating: 10 A}
          lock: {kind: switch, terminals: [r, s], positions: {"off": [], riding: [[r, s]]} }
          starter relay: {kind: starter relay}
          starter: {kind: starter}
          start button: {kind: button}
          tail lamp: {kind: lamp, filament: 5 W}
          work lamp: {kind: lamp, filament: 21 W}
        wires:
          - {name: plus one, from: battery.+, to: plug.1a, size: 4 mm2, length: 0.1 m}
          - {name: plus two, from: plug.1b, to: main fuse.1, size: 4 mm2, length: 0.1 m}
          - {name: lock feed, from: main fuse.2, to: lock.r, size: 1 mm2, length: 0.5 m}
          - {name: tail feed, from: lock.s, to: tail lamp.+, size: 1 mm2, length: 0.5 m}
          - {name: tail ground, from: tail lamp.-, to: battery.-, size: 1 mm2, length: 0.5 m}
          - {name: second lead, from: battery.+, to: second fuse.1, size: 1 mm2, length: 0.1 m}
          - {name: work feed, from: second fuse.2, to: work lamp.+, size: 1 mm2, length: 0.5 m}
          - {name: work ground, from: work lamp.-, to: battery.-, size: 1 mm2, length: 0.5 m}
          - {name: starter cable, from: battery.+, to: starter relay.30, size: 16 mm2, length: 0.3 m}
          - {name: starter feed, from: starter relay.45, to: starter.+, size: 16 mm2, length: 0.6 m}
          - {name: starter strap, from: starter.-, to: battery.-, size: 16 mm2, length: 0.5 m}
          - {name: button feed, from: lock.s, to: start button.1, size: 1 mm2, length: 0.5 m}
          - {name: relay feed, from: start button.2, to: starter relay.50, size: 1 mm2, length: 0.5 m}
          - {name: relay ground, from: starter relay.31, to: battery.-, size: 1 mm2, length: 0.5 m}
        """);

    [Theory]
    [InlineData("plus one", "before any fuse")]
    [InlineData("plus two", "before any fuse, behind a plug")]
    [InlineData("work feed", "behind a second fuse at the battery")]
    [InlineData("starter feed", "behind a contact on a cable without a fuse")]
    [InlineData("starter", "behind a contact on a cable without a fuse")]
    public void What_the_battery_reaches_with_the_main_fuse_out_is_taken_in_hand_with_minus_off(string thing, string where) =>
        Assert.True(new InHand(Bike).IsUnfused(new Check(CheckKind.Terminals, thing)), where);

    [Theory]
    [InlineData("lock feed")]
    [InlineData("tail feed")]
    [InlineData("relay feed")]
    [InlineData("tail lamp")]
    public void Where_only_the_main_fuse_feeds_a_thing_its_pulling_is_enough(string thing) => Assert.False(new InHand(Bike).IsUnfused(new Check(CheckKind.Terminals, thing)));

    [Fact]
    public void Where_no_one_of_two_fuses_is_the_main_one_minus_comes_off_for_both() =>
        Assert.All(["lock feed", "work feed"], wire => Assert.True(new InHand(Examples.Of(Text("front fuse"))).IsUnfused(new Check(CheckKind.Terminals, wire))));

    private static string Text(string fuse) => $$"""
        loomwright: 1
        name: Turnstone
        parts:
          battery: {kind: battery, chemistry: agm}
          {{fuse}}: {kind: fuse, rating: 20 A}
          second fuse: {kind: fuse, rating: 10 A}
          tail lamp: {kind: lamp, filament: 5 W}
          work lamp: {kind: lamp, filament: 21 W}
        wires:
          - {from: battery.+, to: {{fuse}}.1, size: 1 mm2, length: 0.1 m}
          - {name: lock feed, from: {{fuse}}.2, to: tail lamp.+, size: 1 mm2, length: 0.5 m}
          - {from: tail lamp.-, to: battery.-, size: 1 mm2, length: 0.5 m}
          - {from: battery.+, to: second fuse.1, size: 1 mm2, length: 0.1 m}
          - {name: work feed, from: second fuse.2, to: work lamp.+, size: 1 mm2, length: 0.5 m}
          - {from: work lamp.-, to: battery.-, size: 1 mm2, length: 0.5 m}
        """;
}
