using System.Collections.Concurrent;
using Loomwright.Design;
using Loomwright.Drawing;

namespace Loomwright.Tests.Drawing;

/// <summary>What holds on every sheet of every example: places, plugs, functions, the overview, and wires to follow.</summary>
public class EverySheetTests
{
    private const int FewTrials = 10;

    private static readonly ConcurrentDictionary<string, Lazy<List<Scene>>> Drawn = new(StringComparer.Ordinal);

    public static TheoryData<string> Bikes => ["kittiwake-bench", "sandpiper", "kittiwake", "turnstone"];

    [Theory]
    [MemberData(nameof(Bikes))]
    public void No_wire_overlaps_touches_or_runs_through_a_part_and_no_text_lies_on_another(string bike) =>
        Assert.Empty(All(bike).Select(s => (s.Title, Flaws: Flaws.Of(s))).Where(s => !s.Flaws.None).Select(s => $"{s.Title}: {s.Flaws}"));

    [Theory]
    [MemberData(nameof(Bikes))]
    public void No_type_is_smaller_than_two_and_a_half_millimetres_and_none_leaves_the_paper(string bike) =>
        Assert.Empty(All(bike).SelectMany(s => s.Letterings
            .Where(l => l.Size / Paper.PixelsPerMillimetre < 2.5 || l.Area.X < 0 || l.Area.Right > s.Width || l.Area.Y < 0 || l.Area.Bottom > s.Height)
            .Select(l => $"{s.Title}: {l.Text}")));

    [Theory]
    [MemberData(nameof(Bikes))]
    public void The_line_beside_the_title_ends_before_the_page_number(string bike) =>
        Assert.Empty(All(bike).Where(s => Widths.Of(s.Title, 28, bold: true) + Widths.Of(s.About, 16, bold: false) > s.Width - 220).Select(s => s.About));

    [Theory]
    [MemberData(nameof(Bikes))]
    public void No_light_of_a_case_lies_on_a_text_or_a_wire(string bike) =>
        Assert.Empty(All(bike).SelectMany(s => s.CaseLights
            .Select(l => (l.Part, l.Terminal, Area: new Area(l.Middle.X - 4, l.Middle.Y - 4, 8, 8)))
            .Where(l => s.Letterings.Any(t => t.Area.Meets(l.Area)) || new Runs([.. s.Strands.Select(w => (IReadOnlyList<Spot>)w.Path)]).Through(l.Area, _ => true) > 0)
            .Select(l => $"{s.Title}: {l.Part} {l.Terminal}")));

    [Fact]
    public void A_place_shows_all_its_parts_and_flags_what_leaves_with_its_page()
    {
        var loom = Read("kittiwake");
        var sheet = Sheets.One(loom, SheetKind.Place, "tray", FewTrials)!;
        Assert.Equal(loom.Parts.Where(p => p.Place == "tray").Select(p => p.Name).Order(StringComparer.Ordinal), sheet.Cells.Select(c => c.Part).Order(StringComparer.Ordinal));
        var seat = Sheets.One(loom, SheetKind.Place, "seat", FewTrials)!.Page;
        Assert.Contains(sheet.Letterings, l => l.Text == FormattableString.Invariant($"box X4 start relay, page {seat}"));
        Assert.Contains(sheet.Letterings, l => l.Text == "ground bar BN 1");
        Assert.DoesNotContain(sheet.Strands, s => s.Wire == "starter relay ground");
    }

    [Fact]
    public void A_plug_has_a_row_for_each_cavity_in_the_order_on_the_case_and_tells_where_each_wire_ends()
    {
        var sheet = Sheets.One(Read("kittiwake"), SheetKind.Plug, "box X")!;
        Assert.Equal(Enumerable.Range(1, 12).Select(i => FormattableString.Invariant($"X{i}")), sheet.Letterings.Where(l => l.Bold).OrderBy(l => l.At.Y).Select(l => l.Text));
        Assert.Equal(12, sheet.Signs.Count(s => s.Symbol == "tick"));
        Assert.Contains(sheet.Letterings, l => l.Text == "tail plug.4a → rear cluster.stop");
        Assert.Contains("wire side", sheet.About, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wire_is_followed_through_plugs_to_where_it_ends_and_all_stays_at_its_place()
    {
        var loom = Read("kittiwake");
        var (overview, sheet) = (Sheets.Overview(loom, FewTrials), Sheets.One(loom, SheetKind.Wire, "stop lamp feed", FewTrials)!);
        Assert.Equal(["box X8", "tail plug 4b", "rear cluster stop"], sheet.Stops.Select(s => $"{s.Part} {s.Terminal}"));
        Assert.Equal(["stop", "stop lamp feed"], sheet.Strands.Where(s => s.Strong).Select(s => s.Wire).Order(StringComparer.Ordinal));
        Assert.All(overview.Strands, s => Assert.Equal(s.Path, sheet.Strands.Single(f => f.Wire == s.Wire).Path));
        Assert.Equal(overview.Cells.Select(c => c.Area), sheet.Cells.Select(c => c.Area));
        Assert.Equal(["1", "2", "3"], sheet.Letterings.Where(l => l.Numbered).Select(l => l.Text));
    }

    [Fact]
    public void A_return_can_be_followed_though_it_is_no_line() =>
        Assert.Equal("tail stud", Sheets.One(Read("kittiwake"), SheetKind.Wire, "rear cluster ground", 1)!.Stops[^1].Part);

    private static List<Scene> All(string bike) => Drawn.GetOrAdd(bike, b => new(() =>
    {
        var loom = Read(b);
        loom = loom with { Placing = Sheets.Arrange(loom, 1) };
        var wires = loom.Wires.Where((_, i) => i % 29 == 3).Select(w => (SheetKind.Wire, w.Name));
        return [.. Sheets.Of(loom).Select(s => (s.Kind, s.Of)).Concat(wires).Select(s => Sheets.One(loom, s.Item1, s.Item2, 1)!)];
    })).Value;

    private static Loom Read(string bike) => Examples.Read($"examples/{bike}/{bike}.loom.yaml");
}
