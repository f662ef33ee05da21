using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Tests.Checks;

/// <summary>Rules on grounds, rings, crimps and spare leads, on whole bikes with one thing changed.</summary>
public class GroundRuleTests
{
    private static readonly string[] Straps = ["engine-strap-thin", "no-engine-strap"];
    private static readonly string Kittiwake = Repository.Read("examples/kittiwake/kittiwake.loom.yaml");
    private static readonly string Sandpiper = Repository.Read("examples/sandpiper/sandpiper.loom.yaml");

    [Theory]
    [InlineData("16 mm2", null)]
    [InlineData("10 mm2", "engine-strap-thin")]
    [InlineData("2.5 mm2", "no-engine-strap")]
    public void A_strap_is_as_thick_as_the_starter_cable_or_thinner_or_no_strap_at_all(string size, string? code) =>
        Assert.Equal(code, Straps.SelectMany(c => Rule(c, Examples.Of(Kittiwake.Replace("to: battery.-\n    size: 16 mm2", $"to: battery.-\n    size: {size}", StringComparison.Ordinal)))).SingleOrDefault()?.Code);

    [Fact]
    public void Without_a_strap_the_switches_screwed_into_the_engine_lose_their_ground()
    {
        var found = Assert.Single(Rule("sensor-on-insulated-engine", Examples.Of(Kittiwake).Without("engine strap")));
        Assert.Equal(new Subject.OfPart("engine block"), found.Where);
        Assert.Contains("gearbox, oil switch", found.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("starter relay.45", "motor's post")]
    [InlineData("starter relay.30", "which is live")]
    public void A_second_ground_on_either_post_of_the_starter_relay_is_stopped(string post, string words)
    {
        var found = Assert.Single(Rule("ground-on-starter-post", Examples.Of(With("second ground", post, "battery.-", "16 mm2"))));
        Assert.Equal(Severity.Stop, found.Severity);
        Assert.Contains(words, found.What, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_the_wire_across_the_steering_everything_at_the_front_returns_through_the_bearings()
    {
        var found = Assert.Single(Rule("head-bearing-only-ground", Examples.Of(Sandpiper).Without("steering wire")));
        Assert.All(["headlamp", "horn button", "left front indicator"], load => Assert.Contains(load, found.What, StringComparison.Ordinal));
        Assert.DoesNotContain("rear", found.What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fork_that_nothing_returns_through_may_hang_on_its_bearings() =>
        Assert.Empty(Rule("head-bearing-only-ground", Examples.Of(Kittiwake).Without("steering wire")));

    [Fact]
    public void A_tail_ground_taken_to_the_box_makes_the_box_s_own_lead_carry_the_tail()
    {
        var found = Assert.Single(Rule("box-ground-carries-loads", Examples.Of(Kittiwake.Replace("from: tail plug.7a, to: ground bar", "from: tail plug.7a, to: box.B-", StringComparison.Ordinal))));
        Assert.All(["rear cluster", "beacon"], load => Assert.Contains(load, found.What, StringComparison.Ordinal));
        Assert.DoesNotContain("headlamp", found.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rings: 12", null)]
    [InlineData("rings: 9", Severity.Look)]
    [InlineData("# said nothing", Severity.Note)]
    public void Ten_rings_on_a_bar_are_right_or_too_many_by_what_is_said_of_it(string rings, Severity? severity) =>
        Assert.Equal(severity, Rule("too-many-rings", Examples.Of(Kittiwake.Replace("rings: 12", rings, StringComparison.Ordinal))).SingleOrDefault(f => f.Where == new Subject.OfPart("ground bar"))?.Severity);

    [Theory]
    [InlineData("tail plug.7b", true)]
    [InlineData("box.X8", true)]
    [InlineData("tail stud", false)]
    [InlineData("rear cluster.stop", false)]
    public void A_second_wire_on_a_plug_s_terminal_is_noted_and_on_a_stud_or_a_lamp_s_lead_not(string at, bool told) =>
        Assert.Equal(told, Rule("two-wires-in-one-crimp", Examples.Of(With("second", at, "yoke ground", "0.5 mm2"))).Any(f => f.What.Contains("second", StringComparison.Ordinal)));

    [Fact]
    public void A_spare_lead_of_the_lock_that_can_be_live_is_told_unless_the_file_calls_it_unused()
    {
        var bench = Repository.Read("examples/kittiwake-bench/kittiwake-bench.loom.yaml");
        Assert.Empty(Rule("live-unused-lead", Examples.Of(bench)));
        var found = Assert.Single(Rule("live-unused-lead", Examples.Of(bench.Replace("unused: [t, u]", "unused: [t]", StringComparison.Ordinal))));
        Assert.Equal(new Subject.OfTerminal(new TerminalRef("lock", "u")), found.Where);
    }

    private static string With(string name, string from, string to, string size) =>
        Kittiwake.Replace("\nfunctions:", $"\n  - {{name: {name}, from: {from}, to: {to}, size: {size}, length: 40 cm}}\n\nfunctions:", StringComparison.Ordinal);

    // That rule alone: the others take their time.
    private static ImmutableArray<Finding> Rule(string code, Loom loom) => Rules.All.Single(r => r.Code == code).Look(new Study(loom));
}
