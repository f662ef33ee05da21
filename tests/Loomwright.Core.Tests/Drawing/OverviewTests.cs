using System.Globalization;
using Loomwright.Design;
using Loomwright.Drawing;

namespace Loomwright.Tests.Drawing;

public class OverviewTests
{
    private const int FewTrials = 40;

    public static TheoryData<string> Bikes => ["kittiwake-bench", "sandpiper", "kittiwake", "turnstone"];

    [Theory]
    [MemberData(nameof(Bikes))]
    public void No_wire_overlaps_touches_or_runs_through_a_part_and_no_label_collides(string bike)
    {
        var flaws = Flaws.Of(Sheets.Overview(Read(bike), bike == "turnstone" ? 1 : FewTrials));
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{bike}: {flaws.Crossings} crossings, straight lines {flaws.StraightCrossings}"));
        Assert.Equal((0, 0, 0, 0, 0), (flaws.Overlaps, flaws.Touches, flaws.ThroughCells, flaws.CollidingLabels, flaws.Unrouted));
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Every_wire_is_a_line_or_is_named_at_a_ground_symbol(string bike)
    {
        var loom = Read(bike);
        var scene = Sheets.Overview(loom, 1);
        var returns = scene.Letterings.Where(l => l.Wire is null).Select(l => l.Text).ToList();
        var lines = scene.Strands.Select(s => s.Wire).ToHashSet();
        Assert.All(
            loom.Wires.Where(w => !lines.Contains(w.Name)),
            w => Assert.Contains(returns, r => r == $"{w.To.Part} {Labels.Of(w)}" || r == $"{w.From.Part} {Labels.Of(w)}"));
    }

    [Fact]
    public void The_label_of_a_wire_stands_at_both_its_ends()
    {
        var scene = Sheets.Overview(Examples.Kittiwake, FewTrials);
        Assert.All(scene.Strands, s => Assert.Equal(2, scene.Letterings.Count(l => l.Wire == s.Wire)));
        Assert.Equal(["GN/WH 0.5", "GN/WH 0.5"], scene.Letterings.Where(l => l.Wire == "stop lamp feed").Select(l => l.Text));
    }

    [Fact]
    public void A_lead_that_carries_a_sum_is_a_line_and_the_return_of_one_lamp_is_not()
    {
        var lines = Sheets.Overview(Examples.Kittiwake, FewTrials).Strands.Select(s => s.Wire).ToList();
        Assert.Contains("battery minus", lines);
        Assert.Contains("tail ground", lines);
        Assert.DoesNotContain("rear cluster ground", lines);
    }

    [Fact]
    public void Neighbours_in_a_plug_are_neighbours_in_the_picture()
    {
        var scene = Sheets.Overview(Examples.Kittiwake, FewTrials);
        var marks = Enumerable.Range(1, 8).Select(i => string.Create(CultureInfo.InvariantCulture, $"X{i}"));
        var heights = marks.Select(m => scene.Letterings.Single(l => l.Text == m).At.Y).ToList();
        Assert.All(heights.Zip(heights.Skip(1)), pair => Assert.Equal(20, pair.Second - pair.First));
    }

    [Fact]
    public void No_type_is_smaller_than_two_and_a_half_millimetres() =>
        Assert.All(Sheets.Overview(Examples.Kittiwake, 1).Letterings, l => Assert.True(l.Size / Paper.PixelsPerMillimetre >= 2.5));

    [Fact]
    public void A_search_takes_crossings_out_and_the_bench_needs_few()
    {
        var few = Flaws.Of(Sheets.Overview(Examples.Kittiwake, 1)).Crossings;
        var many = Flaws.Of(Sheets.Overview(Examples.Kittiwake, 600)).Crossings;
        Assert.InRange(many, 0, Math.Min(few, 10));
    }

    [Fact]
    public void The_same_design_gives_the_same_bytes_whatever_the_culture()
    {
        var here = Svg.Write(Sheets.Overview(Examples.Kittiwake, FewTrials));
        var before = CultureInfo.CurrentCulture;
        try
        {
            var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            comma.NumberFormat.NumberDecimalSeparator = ",";
            CultureInfo.CurrentCulture = comma;
            Assert.Equal(here, Svg.Write(Sheets.Overview(Examples.Kittiwake, FewTrials)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_part_nobody_has_wired_is_drawn_too() =>
        Assert.Equal(["horn"], Sheets.Overview(Examples.Of("loomwright: 1\nname: Box of parts\nparts:\n  horn: {kind: horn, current: 4 A}\n"), FewTrials).Cells.Select(c => c.Part));

    [Fact]
    public void A_bike_without_a_part_is_an_empty_sheet() =>
        Assert.Empty(Sheets.Overview(Examples.Of("loomwright: 1\nname: Nothing yet\n"), FewTrials).Cells);

    private static Loom Read(string bike) => Examples.Read($"examples/{bike}/{bike}.loom.yaml");
}
