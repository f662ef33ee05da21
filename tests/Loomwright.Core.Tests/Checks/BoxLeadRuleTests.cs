using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Tests.Checks;

/// <summary>Rules on the leads and loads of a box, on whole bikes and gallery files with one thing changed.</summary>
public class BoxLeadRuleTests
{
    private static readonly string Kittiwake = Repository.Read("examples/kittiwake/kittiwake.loom.yaml");
    private static readonly string ByBus = Repository.Read("examples/gallery/kinds/block-by-bus.loom.yaml");

    private static readonly string Lamp = """
        loomwright: 1
        name: Kittiwake
        parts:
          battery: {kind: battery, chemistry: agm}
          main fuse: {kind: fuse, rating: 20 A}
          box:
            kind: load controller
            plugs:
              P: [B+, B-]
              X: [X1, X2]
            supply: B+
            ground: B-
            awake: key
            inputs:
              key: {terminal: X1, active: plus}
            outputs:
              work lamp: {terminal: X2, when: key, limit: 8 A, trips after: 200 ms}
          work lamp: {kind: lamp, filament: 60 W}
        wires:
          - {from: battery.+, to: main fuse.1, size: 4 mm2, length: 0.2 m}
          - {from: main fuse.2, to: box.B+, size: 4 mm2, length: 0.3 m}
          - {from: box.B-, to: battery.-, size: 4 mm2, length: 0.3 m}
          - {from: main fuse.2, to: box.X1, size: 4 mm2, length: 0.3 m}
          - {from: box.X2, to: work lamp.+, size: 1.5 mm2, length: 0.5 m}
          - {from: work lamp.-, to: battery.-, size: 1.5 mm2, length: 0.5 m}
        """;

    [Fact]
    public void A_data_lead_on_the_neighbour_is_told_with_the_terminal_it_belongs_on()
    {
        var found = Assert.Single(Rule("data-lead-on-another-input", Examples.Of(Kittiwake.Replace("to: box.D1,", "to: box.Y10,", StringComparison.Ordinal).Replace("from: signal plug.9a, to: box.Y10", "from: signal plug.9a, to: box.D1", StringComparison.Ordinal))));
        Assert.Equal(new Subject.OfTerminal(new TerminalRef("box", "Y10")), found.Where);
        Assert.Contains("box D1", found.Do, StringComparison.Ordinal);
    }

    [Fact]
    public void The_two_leads_of_a_bus_exchanged_are_told_both()
    {
        Assert.Empty(Rule("data-lead-on-another-input", Examples.Of(ByBus)));
        var crossed = ByBus.Replace("left block.high, to: box.D1", "left block.high, to: box.D2", StringComparison.Ordinal).Replace("left block.low, to: box.D2", "left block.low, to: box.D1", StringComparison.Ordinal);
        Assert.Equal(2, Rule("data-lead-on-another-input", Examples.Of(crossed)).Length);
    }

    [Fact]
    public void A_block_that_loses_its_ground_is_told_once_and_by_its_own_name()
    {
        var found = Assert.Single(Rules.Check(Examples.Of(Kittiwake).Without("thumb ground")), f => f.Severity > Severity.Note);
        Assert.Equal(("block-without-ground", (Subject)new Subject.OfTerminal(new TerminalRef("thumb", "-"))), (found.Code, found.Where));
    }

    [Theory]
    [InlineData("front brake: {terminal: Y4, active: ground}", "front brake: {terminal: Y4, active: plus}", "Y4")]
    [InlineData("park: {terminal: Y2, active: plus}", "park: {terminal: Y2, active: ground}", "Y2")]
    public void An_input_declared_for_the_other_side_than_its_switch_joins_is_told(string was, string now, string terminal)
    {
        var found = Assert.Single(Rule("input-joined-to-wrong-side", Examples.Of(Kittiwake.Replace(was, now, StringComparison.Ordinal))));
        Assert.Equal(new Subject.OfTerminal(new TerminalRef("box", terminal)), found.Where);
    }

    [Theory]
    [InlineData("limit: 8 A, trips after: 200 ms", null)]
    [InlineData("limit: 4 A, trips after: 200 ms", "output-above-limit")]
    [InlineData("limit: 4 A, trips after: 0 ms", "output-above-limit")]
    [InlineData("limit: 8 A, trips after: 0 ms", "output-cannot-start")]
    public void A_lamp_above_the_limit_warm_is_one_thing_and_one_that_trips_it_only_cold_another(string output, string? code) =>
        Assert.Equal(code, Above(Lamp.Replace("limit: 8 A, trips after: 200 ms", output, StringComparison.Ordinal)).SingleOrDefault()?.Code);

    [Theory]
    [InlineData("40 A", false)]
    [InlineData("9 A", true)]
    public void Outputs_that_each_keep_their_limit_can_pass_the_box_s_together(string total, bool told) =>
        Assert.Equal(told, !Rule("total-above-limit", Examples.Of(Kittiwake.Replace("total limit: 40 A", $"total limit: {total}", StringComparison.Ordinal))).IsEmpty);

    [Fact]
    public void A_bench_supply_too_small_for_a_lamp_is_a_note_that_does_not_blame_the_bike()
    {
        var found = Assert.Single(Rule("cold-load-resets-box", Examples.Read("examples/cold-start/cold-start.loom.yaml")));
        Assert.Equal(Severity.Note, found.Severity);
        Assert.Contains("too small for work lamp", found.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nothing", false)]
    [InlineData("block ground", true)]
    [InlineData("block data", true)]
    public void A_box_that_only_a_button_of_a_ladder_wakes_does_wake_while_both_its_leads_are_there(string leftOut, bool never)
    {
        var loom = Examples.Of("""
            loomwright: 1
            name: Kittiwake
            parts:
              battery: {kind: battery, chemistry: agm}
              main fuse: {kind: fuse, rating: 5 A}
              block: {kind: button block, reports by: resistor ladder, buttons: [wake, horn]}
              box:
                kind: load controller
                plugs:
                  P: [B+, B-]
                  X: [X1, D1]
                supply: B+
                ground: B-
                awake: latching(wake; until wake)
                data: {terminal: D1, reads: resistor ladder}
                inputs:
                  wake: {button: 1}
                outputs:
                  tail lamp: {terminal: X1, when: always}
              tail lamp: {kind: lamp, filament: 5 W}
            wires:
              - {from: battery.+, to: main fuse.1, size: 0.5 mm2, length: 0.2 m}
              - {from: main fuse.2, to: box.B+, size: 0.5 mm2, length: 0.3 m}
              - {from: box.B-, to: battery.-, size: 0.5 mm2, length: 0.3 m}
              - {name: block data, from: block.data, to: box.D1, size: 0.5 mm2, length: 0.3 m}
              - {name: block ground, from: block.-, to: battery.-, size: 0.5 mm2, length: 0.3 m}
              - {from: box.X1, to: tail lamp.+, size: 0.5 mm2, length: 0.3 m}
              - {from: tail lamp.-, to: battery.-, size: 0.5 mm2, length: 0.3 m}
            """);
        Assert.Equal(never, !Rule("box-never-wakes", loom.Without(leftOut)).IsEmpty);
    }

    // That rule alone: the others take their time.
    private static ImmutableArray<Finding> Rule(string code, Loom loom) => Rules.All.Single(r => r.Code == code).Look(new Study(loom));

    private static IEnumerable<Finding> Above(string text) => Rules.Check(Examples.Of(text)).Where(f => f.Severity > Severity.Note);
}
