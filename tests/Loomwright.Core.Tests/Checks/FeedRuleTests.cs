using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Tests.Checks;

/// <summary>Rules on feeds, fuses and charging, on whole bikes with one thing changed.</summary>
public class FeedRuleTests
{
    private const string ChargeLead = "from: charge fuse.2, to: alternator.B+";
    private static readonly string Kittiwake = Repository.Read("examples/kittiwake/kittiwake.loom.yaml");
    private static readonly string Sandpiper = Repository.Read("examples/sandpiper/sandpiper.loom.yaml");

    [Fact]
    public void A_charging_lead_straight_to_the_battery_is_stopped_once()
    {
        var found = Assert.Single(Above(Kittiwake.Replace(ChargeLead, "from: battery.+, to: alternator.B+", StringComparison.Ordinal)));
        Assert.Equal(("regulator-without-own-fuse", Severity.Stop), (found.Code, found.Severity));
    }

    [Fact]
    public void On_a_bike_with_plus_on_the_frame_it_is_the_minus_lead_of_the_regulator_that_wants_the_fuse()
    {
        const string Bike = """
            loomwright: 1
            name: Sandpiper
            ground: positive
            parts:
              battery: {kind: battery, chemistry: lead-acid}
              charge fuse: {kind: fuse, rating: 15 A}
              alternator: {kind: alternator, power: 120 W}
            wires:
              - {from: battery.+, to: alternator.B+, size: 2.5 mm2, length: 0.6 m}
              - {from: battery.-, to: charge fuse.1, size: 2.5 mm2, length: 0.2 m}
              - {from: charge fuse.2, to: alternator.-, size: 2.5 mm2, length: 0.6 m}
            """;
        Assert.Empty(Rule("regulator-without-own-fuse", Examples.Of(Bike)));
        Assert.NotEmpty(Rule("regulator-without-own-fuse", Examples.Of(Bike.Replace("from: charge fuse.2, to: alternator.-", "from: battery.-, to: alternator.-", StringComparison.Ordinal))));
    }

    [Fact]
    public void A_regulator_behind_the_main_fuse_of_a_bike_with_a_box_is_more_than_a_note()
    {
        var found = Assert.Single(Rule("regulator-behind-main-fuse", Examples.Of(Kittiwake.Replace(ChargeLead, "from: main fuse.2, to: alternator.B+", StringComparison.Ordinal))));
        Assert.Equal((Severity.Look, (Subject)new Subject.OfPart("main fuse")), (found.Severity, found.Where));
        Assert.Contains("destroy box", found.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_thin_lead_from_battery_plus_to_the_coil_of_the_starter_relay_is_no_starter_cable() =>
        Assert.Contains(Above(Kittiwake.Replace("from: box.X4, to: starter relay.50", "from: battery.+, to: starter relay.50", StringComparison.Ordinal)), f => f is { Code: "unfused-feed", Severity: Severity.Stop });

    [Fact]
    public void A_plug_between_battery_and_main_fuse_is_part_of_the_way_to_the_fuse_and_no_load()
    {
        const string Bike = """
            loomwright: 1
            name: Sandpiper
            parts:
              battery: {kind: battery, chemistry: lead-acid}
              plug: {kind: connector, cavities: [1], terminal size: 6.3 mm}
              main fuse: {kind: fuse, rating: 5 A}
              tail lamp: {kind: lamp, filament: 5 W}
            wires:
              - {from: battery.+, to: plug.1a, size: 0.5 mm2, length: 0.1 m}
              - {from: plug.1b, to: main fuse.1, size: 0.5 mm2, length: 0.1 m}
              - {from: main fuse.2, to: tail lamp.+, size: 0.5 mm2, length: 0.6 m}
              - {from: tail lamp.-, to: battery.-, size: 0.5 mm2, length: 0.6 m}
            """;
        Assert.Empty(Rule("unfused-feed", Examples.Of(Bike)));
        Assert.Equal(Severity.Stop, Assert.Single(Rule("unfused-feed", Examples.Of(Bike.Replace("from: main fuse.2", "from: plug.1b", StringComparison.Ordinal)))).Severity);
    }

    [Theory]
    [InlineData("main fuse.2", "ground bar", "and main fuse opens at once")]
    [InlineData("battery.+", "engine block", "they glow")]
    [InlineData("lock.s", "bar ground", null)]
    public void A_feed_wired_straight_to_ground_is_stopped_with_what_stands_in_between(string from, string to, string? words) =>
        Assert.Equal(words is not null, Rule("feed-joined-to-ground", Examples.Of(Kittiwake.Replace("\nfunctions:", $"\n  - {{name: bridge, from: {from}, to: {to}, size: 4 mm2, length: 20 cm}}\n\nfunctions:", StringComparison.Ordinal)))
            is [var found] && found.Why.Contains(words!, StringComparison.Ordinal) && found.What.Contains("bridge", StringComparison.Ordinal));

    [Theory]
    [InlineData("ignition fuse.2", "key fuse.2", true)]
    [InlineData("charge fuse.2", "main fuse.2", true)]
    [InlineData("main fuse.1", "main fuse.2", true)]
    [InlineData("main fuse.1", "charge fuse.1", false)]
    [InlineData("key fuse.1", "ignition fuse.1", false)]
    public void Two_feeds_joined_behind_their_fuses_are_told_and_before_them_not(string from, string to, bool told) =>
        Assert.Equal(told, !Rule("feeds-joined-behind-fuses", Examples.Of(Kittiwake.Replace("\nfunctions:", $"\n  - {{name: bridge, from: {from}, to: {to}, size: 4 mm2, length: 20 cm}}\n\nfunctions:", StringComparison.Ordinal))).IsEmpty);

    [Theory]
    [InlineData("signal fuse: {kind: fuse, rating: 10 A", "signal fuse: {kind: fuse, rating: 3 A", true)]
    [InlineData("signal fuse: {kind: fuse, rating: 10 A", "signal fuse: {kind: fuse, rating: 7.5 A", false)]
    [InlineData("horn fuse: {kind: fuse, rating: 5 A", "horn fuse: {kind: fuse, rating: 2 A", true)]
    public void A_fuse_below_what_its_circuit_takes_is_told(string was, string now, bool told) =>
        Assert.Equal(told, !Rule("fuse-below-load", Examples.Of(Sandpiper.Replace(was, now, StringComparison.Ordinal))).IsEmpty);

    [Fact]
    public void A_fuse_that_a_short_opens_is_not_called_too_small() =>
        Assert.Empty(Rule("fuse-below-load", Examples.Gallery("lock-joins-feed-and-ground")));

    [Theory]
    [InlineData("lifepo4", "    regulates at: 14.7 V\n", true)]
    [InlineData("lifepo4", "    regulates at: 14.6 V\n", false)]
    [InlineData("lifepo4", "", false)]
    [InlineData("agm", "    regulates at: 14.7 V\n", false)]
    public void Only_a_lithium_battery_and_only_a_figure_the_file_states_is_held_against_the_regulator(string chemistry, string regulates, bool told) =>
        Assert.Equal(told, !Rule("charging-above-battery", Examples.Of(Kittiwake.Replace("chemistry: agm", $"chemistry: {chemistry}", StringComparison.Ordinal).Replace("    power: 240 W\n", $"    power: 240 W\n{regulates}", StringComparison.Ordinal))).IsEmpty);

    [Fact]
    public void A_longer_thinner_headlamp_feed_is_named_among_what_loses_too_much_and_a_wider_aim_quiets_it()
    {
        var worse = Kittiwake.Replace("name: dip, from: box.X5, to: power plug.6a, size: 1.5 mm2", "name: dip, from: box.X5, to: power plug.6a, size: 0.5 mm2", StringComparison.Ordinal);
        Assert.Contains("headlamp dip", Assert.Single(Rule("drop-above-limit", Examples.Of(worse))).What, StringComparison.Ordinal);
        Assert.Empty(Rule("drop-above-limit", Examples.Of(worse.Replace("drop limit: 3 % both ways", "drop limit: 10 % both ways", StringComparison.Ordinal))));
    }

    // That rule alone: the others take their time.
    private static ImmutableArray<Finding> Rule(string code, Loom loom) => Rules.All.Single(r => r.Code == code).Look(new Study(loom));

    private static IEnumerable<Finding> Above(string text) => Rules.Check(Examples.Of(text)).Where(f => f.Severity > Severity.Note);
}
