using System.Collections.Concurrent;
using System.Globalization;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Sizing;

namespace Loomwright.Tests.Sizing;

public sealed class SizedTests
{
    private static readonly string[] Sizes = ["0.75", "1", "1.5", "2.5", "4"];

    // A whole bike's takes seconds.
    private static readonly ConcurrentDictionary<string, Lazy<Sized>> Wholes = new(StringComparer.Ordinal);

    [Fact]
    public void A_wire_behind_a_small_fuse_behind_a_large_one_is_guarded_by_the_small_one_and_the_link_between_by_the_large()
    {
        var wires = Sized.Of(Examples.Kittiwake).Wires.ToDictionary(w => w.Wire.Name, StringComparer.Ordinal);
        Assert.Equal("main fuse (20 A)", wires["box supply"].Guard?.InWords);
        Assert.Equal("main fuse (20 A)", wires["key fuse link"].Guard?.InWords);
        Assert.Equal("key fuse (3 A)", wires["lock feed"].Guard?.InWords);
        Assert.Equal("key fuse (3 A)", wires["key feed"].Guard?.InWords);
        Assert.Equal("box X7 (trips above 5 A)", wires["tail lamp feed"].Guard?.InWords);
        Assert.Null(wires["battery plus"].Guard);
        Assert.Null(wires["battery minus"].Guard);
    }

    [Fact]
    public void A_second_way_round_a_fuse_that_is_larger_takes_its_place()
    {
        var loom = Behind("10 A", "1.5 mm2", """
              second fuse:
                kind: fuse
                rating: 40 A
            """, """
              - {name: round, from: battery.+, to: second fuse.1, size: 6 mm2, length: 0.1 m}
              - {name: to lamp, from: second fuse.2, to: head lamp.+, size: 6 mm2, length: 0.5 m}
            """);
        Assert.Equal("second fuse (40 A)", Sized.Of(loom).Wires.Single(w => w.Wire.Name == "lamp feed").Guard?.InWords);
    }

    [Fact]
    public void Two_and_a_half_square_behind_30_A_is_a_note_that_names_who_accepts_and_who_rejects_in_the_owners_air_and_insulation()
    {
        var found = Assert.Single(Rules.Check(Behind("30 A", "2.5 mm2")));
        Assert.Equal(("fuse-above-wire", Severity.Note), (found.Code, found.Severity));
        Assert.Contains("in air of 35 °C with 105 °C insulation", found.Why, StringComparison.Ordinal);
        Assert.Contains("33 CFR 183.425 (up to 50.7 A)", found.Why[..found.Why.IndexOf(" accept it", StringComparison.Ordinal)], StringComparison.Ordinal);
        Assert.Contains("metric practice (up to 25 A)", found.Why[found.Why.IndexOf(" accept it", StringComparison.Ordinal)..], StringComparison.Ordinal);
        Assert.StartsWith("A fuse of 25 A, or 4 mm² of wire, passes metric practice. Stricter rules still reject it: ", found.Do, StringComparison.Ordinal);
        Assert.Contains("FAA AC 43.13-1B table 11-3", found.Do, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("33 CFR 183.425", null)]
    [InlineData("metric practice", "fuse-above-wire")]
    [InlineData("MIL-W-5088B bundle", "fuse-above-wire")]
    public void The_rule_the_owner_chose_decides(string rule, string? code)
    {
        var loom = Behind("30 A", "2.5 mm2");
        Assert.Equal(code, Rules.Check(loom with { Conditions = loom.Conditions with { AmpacityRule = rule } }).SingleOrDefault()?.Code);
    }

    [Theory]
    [InlineData("40 A", "0.75 mm2", Severity.Look)]
    [InlineData("25 A", "2.5 mm2", null)]
    [InlineData("30 A", "4 mm2", null)]
    public void Only_what_every_rule_rejects_is_more_than_a_note(string rating, string size, Severity? severity) =>
        Assert.Equal(severity, Rules.Check(Behind(rating, size)).SingleOrDefault()?.Severity);

    [Fact]
    public void Hot_air_and_a_bundle_take_from_what_a_rule_allows()
    {
        var loom = Behind("20 A", "2.5 mm2");
        Assert.Empty(Rules.Check(loom));
        Assert.Single(Rules.Check(loom with { Conditions = loom.Conditions with { Bundle = 5 } }));
        Assert.Single(Rules.Check(loom with { Conditions = loom.Conditions with { Ambient = new(80) } }));
    }

    [Fact]
    public void A_thin_lead_taken_off_behind_a_large_fuse_is_told_as_a_branch_and_the_feed_is_not()
    {
        var found = Assert.Single(Rules.Check(Behind("30 A", "4 mm2", "", "  - {name: sense, from: main fuse.2, to: head lamp.+, size: 0.75 mm2, length: 0.5 m}")));
        Assert.Equal(("branch-behind-larger-fuse", Severity.Look), (found.Code, found.Severity));
        Assert.Equal(new Subject.OfWire("sense"), found.Where);
        Assert.Contains("it fits lamp feed, 4 mm²", found.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(20)]
    [InlineData(30)]
    [InlineData(40)]
    public void No_cure_names_a_larger_fuse(double amps)
    {
        var rating = new Current(amps).Printed;
        var cures = Sizes.SelectMany(mm => Rules.Check(Behind(rating, $"{mm} mm2"))).SelectMany(f => f.Evidence.Where(e => e.Name == "smaller")).ToList();
        Assert.All(cures, c => Assert.True(double.Parse(c.Value.Split(' ')[0], CultureInfo.InvariantCulture) < amps));
    }

    [Fact]
    public void A_headlamp_fed_by_a_thin_wire_gets_a_thicker_one_for_its_drop_and_the_sentence_names_the_limit()
    {
        // 55 W over 6 m of 0.75 mm²: 4.6 A · 0.148 Ω = 0.7 V, and 6 of 6.6 m of 3 % of 12.6 V is 0.34 V.
        var loom = Behind("10 A", "0.75 mm2");
        var wire = loom.Wire("lamp feed")!;
        var sized = Sized.Of(loom with { Wires = loom.Wires.Replace(wire, wire with { Length = new(6) }) });
        var feed = sized.Wires.Single(w => w.Wire.Name == "lamp feed");
        Assert.True(feed.IsThin);
        Assert.Contains("its share by length (6.00 m of 6.60 m) of 3 % (ABYC E-11", feed.Reason, StringComparison.Ordinal);
        Assert.False(Assert.Single(sized.Circuits).IsWithin);
        Assert.InRange(sized.Circuits[0].Drop.Volts, 0.6, 0.9);
    }

    [Fact]
    public void Four_wires_in_a_row_that_are_enough_each_are_enough_together()
    {
        // 55 W over four times 1.8 m: alone each may lose 1.5 % on 1 mm², all four then lose 6 %.
        var loom = Examples.Of("""
            loomwright: 1
            name: Kittiwake
            parts:
              battery: {kind: battery, chemistry: agm}
              main fuse: {kind: fuse, rating: 10 A}
              first splice: {kind: splice}
              second splice: {kind: splice}
              head lamp: {kind: lamp, filament: 55 W}
            wires:
              - {name: battery plus, from: battery.+, to: main fuse.1, size: 6 mm2, length: 0.1 m}
              - {name: one, from: main fuse.2, to: first splice, size: 1 mm2, length: 1.8 m}
              - {name: two, from: first splice, to: second splice, size: 1 mm2, length: 1.8 m}
              - {name: three, from: second splice, to: head lamp.+, size: 1 mm2, length: 1.8 m}
              - {name: four, from: head lamp.-, to: battery.-, size: 1 mm2, length: 1.8 m}
            """);
        var sized = Sized.Of(loom);
        Assert.All(sized.Wires.Skip(1), w => Assert.True(w.IsThin, w.Reason));
        var made = Sized.Of(loom with { Wires = [.. loom.Wires.Zip(sized.Wires, (w, s) => w with { Size = s.Enough!.Value })] });
        var lost = made.Wires.Sum(w => w.Most.Amps * Loomwright.Parts.Conductor.For(w.Wire.Size).Row.OhmsPerMetre * w.Wire.Length.Metres);
        Assert.True(lost <= 0.03 * 12.6, FormattableString.Invariant($"{lost} V"));
        Assert.All(made.Wires, w => Assert.False(w.IsThin, w.Reason));
    }

    [Fact]
    public void A_starter_cable_is_never_enough_where_ten_seconds_of_starting_would_burn_it()
    {
        var cable = Starting.Bike.Wire("starter cable")!;
        var loom = Starting.Bike with { Wires = Starting.Bike.Wires.Replace(cable, cable with { Size = new(1.5), Length = new(0.01) }) };
        var sized = Sized.Of(loom).Wires.Single(w => w.Wire.Name == "starter cable");
        Assert.True(sized.IsThin);
        Assert.True(sized.Enough?.SquareMillimetres >= 4);
        Assert.True(sized.Warmest.Celsius > 105);
    }

    [Fact]
    public void Cold_lamps_above_the_rating_of_a_fuse_that_stands_them_are_told_with_how_long_it_does()
    {
        // One 21 W lamp, fourteen times 1.84 A cold: 129 % of 20 A, which ISO 8820-3 lets a blade fuse carry for seconds.
        var fuses = Sized.Of(Examples.Kittiwake).Fuses;
        Assert.Matches(@"^main fuse \(20 A\): all lamps behind it switched on cold together draw 25\.73 A for a moment, more than its rating\. It stands that: they draw less than half of it within 5 ms, and at 25\.73 A it opens after \d+ s at the earliest \(ISO 8820-3 type C and F\)\.$", fuses[0].StandsCold);
        Assert.Null(fuses[1].StandsCold);
    }

    [Theory]
    [InlineData("80 A", false)]
    [InlineData("40 A", true)]
    [InlineData("4 A", false)]
    public void Nothing_is_said_of_cold_lamps_below_the_rating_nor_that_a_fuse_stands_what_may_open_it(string rating, bool stands)
    {
        // 55 W takes 4.6 A warm and some 65 A cold, sixteen times 4 A.
        var fuse = Assert.Single(Sized.Of(Behind(rating, "6 mm2")).Fuses);
        Assert.Equal(stands, fuse.StandsCold is not null);
        Assert.Equal(rating == "4 A", fuse.ColdMayOpen);
    }

    [Fact]
    public void The_most_a_wire_carries_comes_with_the_operations_that_led_to_it()
    {
        var wire = Sized.Of(Examples.Kittiwake).Wires.Single(w => w.Wire.Name == "stop lamp feed");
        Assert.InRange(wire.Most.Amps, 0.2, 0.3);
        Assert.Contains("lock → riding", wire.When);
        Assert.Equal("front brake → pressed", wire.When[^1]);
    }

    [Fact]
    public void A_lead_before_the_main_fuse_is_sized_for_that_fuse_and_not_for_what_little_flows()
    {
        var wire = Sized.Of(Examples.Kittiwake).Wires.Single(w => w.Wire.Name == "battery plus");
        Assert.Equal(2.5, wire.Enough?.SquareMillimetres);
        Assert.Contains("and to feed main fuse (20 A)", wire.Reason, StringComparison.Ordinal);
        var back = Sized.Of(Examples.Kittiwake).Wires.Single(w => w.Wire.Name == "battery minus");
        Assert.Equal(2.5, back.Enough?.SquareMillimetres);
        Assert.Contains("and to bring back what main fuse (20 A) lets pass", back.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_starter_cable_is_held_against_its_drop_while_starting_and_outside_the_ampacity_rule()
    {
        var wire = Whole("kittiwake").Wires.Single(w => w.Wire.Name == "starter cable");
        Assert.True(wire.Cranking.Amps > 100 && wire.Most.Amps < 10);
        Assert.InRange(wire.Warmest.Celsius, 35, 105);
        Assert.False(wire.IsThin);
    }

    [Theory]
    [InlineData("kittiwake")]
    [InlineData("sandpiper")]
    [InlineData("turnstone")]
    public void Every_wire_of_an_example_gets_a_size_or_a_sentence_why_there_is_none(string name)
    {
        var sized = Whole(name);
        Assert.All(sized.Wires, w => Assert.EndsWith(".", w.Reason, StringComparison.Ordinal));
        Assert.All(sized.Wires, w => Assert.True(w.Warmest.Celsius >= w.Around.Ambient.Celsius));
    }

    [Fact]
    public void A_limit_for_one_way_counts_the_worse_of_the_two_ways_and_lets_one_wire_have_all_of_it()
    {
        // A lead of 1 m there and 3 m back, both 1 mm²: three quarters of what the wires take is lost on the way back.
        Loom With(string limit) => Examples.Of($$"""
            loomwright: 1
            name: Kittiwake
            conditions: {drop limit: {{limit}}}
            parts:
              battery: {kind: battery, chemistry: agm}
              head lamp: {kind: lamp, filament: 55 W}
            wires:
              - {name: there, from: battery.+, to: head lamp.+, size: 1 mm2, length: 1 m}
              - {name: back, from: head lamp.-, to: battery.-, size: 1 mm2, length: 3 m}
            """);
        var both = Assert.Single(Sized.Of(With("3 % both ways")).Circuits);
        var one = Assert.Single(Sized.Of(With("2 % one way")).Circuits);
        Assert.Equal(3 / 4.0, one.Drop.Volts / both.Drop.Volts, 0.02);
        Assert.Equal(("FAA AC 43.13-1B ch. 11", "one-way", 0.02), (one.Limit.Source, one.Limit.Span, one.Limit.Limit));
        Assert.Equal("both ways", both.Limit.Span);

        // 0.0185 Ω/m · 3 m · 4.7 A is 0.26 V: more than three quarters of 2.5 % of 12.6 V, less than all of it.
        Assert.True(Sized.Of(With("2.5 % both ways")).Wires[1].IsThin);
        Assert.False(Sized.Of(With("2.5 % one way")).Wires[1].IsThin);
        Assert.DoesNotContain(Rules.Check(With("3 % one way")), f => f.Code == "drop-above-limit");
        Assert.Contains("the way back", Assert.Single(Rules.Check(With("1.5 % one way")), f => f.Code == "drop-above-limit").What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("kittiwake")]
    [InlineData("sandpiper")]
    public void The_worked_examples_raise_nothing_to_look_at_about_fuses_and_wires(string name) =>
        Assert.DoesNotContain(Rules.Check(Examples.Read($"examples/{name}/{name}.loom.yaml")), f => f is { Severity: > Severity.Note, Code: "fuse-above-wire" or "branch-behind-larger-fuse" });

    private static Sized Whole(string name) => Wholes.GetOrAdd(name, n => new(() => Sized.Of(Examples.Read($"examples/{n}/{n}.loom.yaml")))).Value;

    private static Loom Behind(string rating, string size, string parts = "", string wires = "") => Examples.Of($$"""
        loomwright: 1
        name: Kittiwake
        conditions:
          ambient: 35 C
          ampacity rule: metric practice
        parts:
          battery:
            kind: battery
            chemistry: agm
          main fuse:
            kind: fuse
            rating: {{rating}}
        {{parts}}
          head lamp:
            kind: lamp
            filament: 55 W
        wires:
          - {name: battery plus, from: battery.+, to: main fuse.1, size: {{size}}, length: 0.1 m}
          - {name: lamp feed, from: main fuse.2, to: head lamp.+, size: {{size}}, length: 0.5 m}
          - {name: lamp ground, from: head lamp.-, to: battery.-, size: {{size}}, length: 0.5 m}
        {{wires}}
        """);
}
