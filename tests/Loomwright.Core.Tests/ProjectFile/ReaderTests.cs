using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.Tests.ProjectFile;

public sealed class ReaderTests
{
    private const string Bike = """
        loomwright: 1
        name: Kittiwake
        ground: Positive
        conditions:
          ambient: 35 C
          drop limit: 2,5 % both ways
          country: unset
        places:
          tray: {name: battery tray, heat: warm}
          seat:
          head: {moves: steering}
        distances:
          - between: [tray, seat]
            length: 0.30 m
          - between: [seat, head]
            length: 0.70 m
          - between: [tray, head]
            length: 2 m
        parts:
          Fuse:
            kind: fuse
            rating: 5 A
            place: tray
          lock:
            kind: switch
            place: head
            terminals: [r, s]
            positions:
              "off": []
              riding: [[r, s]]
              park: []
          stud:
            kind: ground stud
            place: seat
          horn:
            kind: horn
            place: seat
            x-bought from: my neighbour
        wires:
          - from: fuse.2
            to: LOCK.R
            size: 20 AWG
            colour: rtsw
            ends: {from: blade 6.3 mm}
          - from: horn.2
            to: stud
            size: 1 mm2
          - name: horn feed
            from: lock.s
            to: horn.1
            size: 1 mm2
            length: 80 cm
        functions:
          horn:
            works: lock is riding
            shows:
              horn: sounds
        bench:
          stand-ins:
            - this: a lead
              for: Lock
        x-shed: {left: [1, 2]}

        """;

    [Theory]
    [InlineData("3 %", 0.03, DropSpan.BothWays)]
    [InlineData("2,5 % both ways", 0.025, DropSpan.BothWays)]
    [InlineData("2 % one way", 0.02, DropSpan.OneWay)]
    [InlineData("2 % One-way", 0.02, DropSpan.OneWay)]
    public void A_drop_limit_holds_for_both_ways_together_unless_it_says_one_way(string written, double share, DropSpan span)
    {
        var file = Written.File($"loomwright: 1\nname: Kittiwake\nconditions:\n  drop limit: {written}\n");
        Assert.Empty(file.Findings);
        Assert.Equal((share, span), (Math.Round(file.Loom!.Conditions.DropShare, 12), file.Loom.Conditions.DropSpan));
    }

    [Fact]
    public void A_drop_limit_the_third_way_is_not_read() =>
        Assert.Contains(Written.File("loomwright: 1\nname: Kittiwake\nconditions:\n  drop limit: 2 % all ways\n").Findings, f => f.Code == "unreadable-quantity");

    [Fact]
    public void A_file_becomes_the_loom_it_describes()
    {
        var file = Written.File(Bike);
        var loom = file.Loom!;
        Assert.True(file.IsComplete);
        Assert.Equal(GroundSide.Positive, loom.Ground);
        Assert.Equal(35, loom.Conditions.Ambient.Celsius);
        Assert.Equal(0.025, loom.Conditions.DropShare, 1e-12);
        Assert.Null(loom.Conditions.Country);
        Assert.Equal(new Place("tray", "battery tray", Heat.Warm, null), loom.Places[0]);
        Assert.Equal(new Place("head", "head", Heat.Cool, "steering"), loom.Places[2]);
        Assert.Equal(5, loom.Part("FUSE")!.Settings.Number("rating"));
        Assert.Equal(new Function("horn", new Expression.Is("lock", "riding"), [new Show("horn", "sounds")], []).Works, loom.Functions[0].Works);
        Assert.Equal([new Show("horn", "sounds")], loom.Functions[0].Shows);
        Assert.Equal([new StandIn("a lead", "lock")], loom.StandIns);
        var wire = loom.Wires[0];
        Assert.Equal("Fuse 2 to lock r", wire.Name);
        Assert.Equal("RD/BK", wire.Colour.ToString());
        Assert.Equal(0.518, wire.Size.SquareMillimetres);
        Assert.Equal("blade 6.3 mm", wire.FromEnd);
        Assert.Null(wire.ToEnd);
    }

    [Fact]
    public void A_missing_length_is_the_shortest_way_and_a_tenth_or_a_hands_breadth_inside_one_place()
    {
        var file = Written.File(Bike);
        Assert.Equal([1.1, 0.3, 0.8], file.Loom!.Wires.Select(w => Math.Round(w.Length.Metres, 9)));
        Assert.Equal([true, true, false], file.Loom.Wires.Select(w => w.LengthIsDerived));
        Assert.All(file.Findings, f => Assert.Equal("length-worked-out", f.Code));
        Assert.Equal(2, file.Findings.Length);
    }

    [Fact]
    public void A_subject_is_found_where_the_file_tells_of_it()
    {
        var file = Written.File(Bike);
        string? At(Subject subject) => file.Place(subject) is { } span ? Bike.Substring(span.Start, span.Length) : null;
        Assert.Equal("lock", At(new Subject.OfPart("Lock")));
        Assert.Equal("s", At(new Subject.OfTerminal(new TerminalRef("lock", "S"))));
        Assert.Equal("horn", At(new Subject.OfTerminal(new TerminalRef("horn", "1"))));
        Assert.Equal("horn feed", At(new Subject.OfWire("horn feed")));
        Assert.StartsWith("from: fuse.2", At(new Subject.OfWire("Fuse 2 to lock r")), StringComparison.Ordinal);
        Assert.Equal("horn", At(new Subject.OfFunction("horn")));
        Assert.Equal("", At(new Subject.Whole()));
        Assert.Null(At(new Subject.OfPart("nobody")));
        Assert.Null(At(new Subject.OfWire("nobody")));
    }

    [Fact]
    public void A_control_with_three_positions_must_say_which()
    {
        var file = Written.File(Bike.Replace("works: lock is riding", "works: lock", StringComparison.Ordinal));
        Assert.Equal("position-missing", Assert.Single(file.Findings, f => f.Severity == Severity.Stop).Code);
    }

    [Fact]
    public void A_part_that_cannot_be_made_out_is_told_once_and_its_wires_wait()
    {
        var file = Written.File(Bike.Replace("kind: switch", "kind: swich", StringComparison.Ordinal));
        Assert.Equal("unknown-kind", Assert.Single(file.Findings, f => f.Severity == Severity.Stop).Code);
        Assert.Equal(3, file.Loom!.Parts.Length);
        Assert.Single(file.Loom.Wires);
        Assert.False(file.IsComplete);
    }

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Line_ends_do_not_matter(string end) => Assert.Equal(
        Written.File(Bike).Loom!.Wires.Select(w => w.ToString()),
        Written.File(Bike.Replace("\n", end, StringComparison.Ordinal)).Loom!.Wires.Select(w => w.ToString()));

    [Fact]
    public void Reading_twice_gives_the_same_findings_in_the_order_of_the_file()
    {
        var file = Written.File(Bike);
        Assert.Equal(file.Findings, Written.File(Bike).Findings);
        var starts = file.Findings.Select(f => ((Subject.Stretch)f.Where).Span.Start).ToList();
        Assert.Equal(starts.Order(), starts);
    }
}
