using System.Collections.Concurrent;
using Loomwright.Drawing;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Tests.Drawing;

/// <summary>Boxes with a place of their own: what is done to one leaves the rest of the sheet as it was, after reading the file again too.</summary>
public class PlacingTests
{
    private const int FewTrials = 20;

    private static readonly ConcurrentDictionary<string, Bike> Ready = new(StringComparer.Ordinal);

    public static TheoryData<string> Bikes => ["kittiwake-bench", "sandpiper", "kittiwake", "turnstone"];

    [Theory]
    [MemberData(nameof(Bikes))]
    public void An_arranged_sheet_is_the_same_after_reading_the_file_again(string bike)
    {
        var found = Loose(bike).Overview(FewTrials);
        var kept = Arranged(bike).Overview();
        Assert.Equal(Boxes(found), Boxes(kept));
        Assert.Equal(Paths(found), Paths(kept));
        AssertClean(kept);
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Adding_a_wire_changes_no_other_wires_path_and_moves_no_box(string bike)
    {
        var before = Arranged(bike);
        var after = WithWire(before, before.Loom!.Wires[0], "one more");
        var (old, now) = (before.Overview(), after.Overview());
        Assert.Equal(Paths(old), Paths(now).Where(p => !p.Contains("one more", StringComparison.Ordinal)));
        Assert.Equal(Corners(old), Corners(now));
        Assert.True(now.Flags.Contains("one more") || now.Strands.Any(s => s.Wire == "one more"));
        AssertClean(now);
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void A_dragged_box_stays_where_it_was_put_and_all_but_its_wires_and_those_it_covers_stand(string bike)
    {
        var before = Arranged(bike);
        var old = before.Overview();
        foreach (var cell in old.Cells.Where((_, i) => i % Math.Max(1, old.Cells.Length / 4) == 0))
        {
            var after = Bike.Read(Assert.IsType<EditOutcome.Edited>(before.Drag(cell.Part, (int)cell.Area.X + 30, (int)cell.Area.Y + 50)).Text);
            var now = after.Overview();
            var moved = now.Cells.Single(c => c.Part == cell.Part).Area;
            Assert.Equal(Boxes(old).Where(b => !b.Contains($" {cell.Part} ", StringComparison.Ordinal)), Boxes(now).Where(b => !b.Contains($" {cell.Part} ", StringComparison.Ordinal)));
            var own = before.Loom!.Wires.Where(w => Names.Same(w.From.Part, cell.Part) || Names.Same(w.To.Part, cell.Part)).Select(w => w.Name).ToHashSet();
            var around = moved.Inside(-120);
            Assert.All(
                old.Strands.Where(s => !own.Contains(s.Wire) && !Meets(s, around)),
                s => Assert.Equal(s.Path, now.Strands.Single(n => n.Wire == s.Wire).Path));
            AssertClean(now);
        }
    }

    [Fact]
    public void A_box_put_on_another_comes_to_stand_beside_it()
    {
        var before = Arranged("kittiwake-bench");
        var (one, other) = (before.Overview().Cells[0], before.Overview().Cells[1]);
        var after = Bike.Read(Assert.IsType<EditOutcome.Edited>(before.Drag(one.Part, (int)other.Area.X, (int)other.Area.Y)).Text).Overview();
        Assert.False(after.Cells.Single(c => c.Part == one.Part).Area.Meets(after.Cells.Single(c => c.Part == other.Part).Area));
        AssertClean(after);
    }

    [Fact]
    public void A_box_that_came_later_stands_apart_and_leaves_the_others_where_they_are()
    {
        var before = Arranged("kittiwake-bench");
        var text = before.Text.Content.Replace("\nparts:\n", "\nparts:\n  second horn: {kind: horn, current: 4 A}\n", StringComparison.Ordinal);
        var after = WithWire(Bike.Read(new SourceText("x", text)), before.Loom!.Wires[0], "to the second horn", "second horn.+");
        var (old, now) = (before.Overview(), after.Overview());
        Assert.Equal(Paths(old), Paths(now).Where(p => !p.Contains("second horn", StringComparison.Ordinal)));
        Assert.Contains(now.Cells, c => c.Part == "second horn");
        AssertClean(now);
    }

    [Fact]
    public void A_drag_of_a_part_there_is_not_is_refused() => Assert.IsType<EditOutcome.Refused>(Arranged("kittiwake-bench").Drag("no such part", 0, 0));

    [Fact]
    public void A_drag_touches_the_line_of_its_box_only()
    {
        var before = Arranged("kittiwake-bench");
        var made = Assert.IsType<EditOutcome.Edited>(before.Drag(before.Overview().Cells[0].Part, 900, 700));
        Assert.Single(made.Replacements);
    }

    private static bool Meets(Strand strand, Area area) => Enumerable.Range(1, strand.Path.Length - 1).Any(i =>
    {
        var (a, b) = (strand.Path[i - 1], strand.Path[i]);
        return new Area(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Abs(a.X - b.X) + 1, Math.Abs(a.Y - b.Y) + 1).Meets(area);
    });

    private static void AssertClean(Scene scene)
    {
        var flaws = Flaws.Of(scene);
        Assert.Equal((0, 0, 0, 0, 0), (flaws.Overlaps, flaws.Touches, flaws.ThroughCells, flaws.CollidingLabels, flaws.Unrouted));
    }

    private static Bike Loose(string bike)
    {
        var text = Repository.Read($"examples/{bike}/{bike}.loom.yaml");
        var layout = text.IndexOf("\nlayout:", StringComparison.Ordinal);
        return Bike.Read(new SourceText(bike, layout < 0 ? text : text[..(layout + 1)]));
    }

    private static Bike Arranged(string bike) => Ready.GetOrAdd(bike, b => Bike.Read(Assert.IsType<EditOutcome.Edited>(Loose(b).Arrange(FewTrials)).Text));

    private static Bike WithWire(Bike bike, Loomwright.Design.Wire like, string name, string? to = null)
    {
        var file = DesignFile.Read(bike.Text);
        var wire = new Node.Map(
            [.. new[] { ("name", name), ("from", like.From.ToString()), ("to", to ?? like.To.ToString()), ("size", "1 mm2"), ("colour", "GN"), ("length", "1 m") }.Select(e => new Entry(Node.Word(e.Item1), Node.Word(e.Item2)))],
            default,
            Flow: false);
        return Bike.Read(Assert.IsType<EditOutcome.Edited>(file.Edit(new Edit.AddItem(NodePath.Root.Key("wires"), wire))).Text);
    }

    private static IEnumerable<string> Paths(Scene scene) => scene.Strands.OrderBy(s => s.Wire, StringComparer.Ordinal).Select(s => $"{s.Wire}: {string.Join(' ', s.Path)}");

    private static IEnumerable<string> Boxes(Scene scene) => scene.Cells.Select(c => $" {c.Part} {c.Area}");

    private static IEnumerable<string> Corners(Scene scene) => scene.Cells.Select(c => $"{c.Part} {new Spot(c.Area.X, c.Area.Y)}");
}
