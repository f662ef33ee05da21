using Loomwright.Design;
using Loomwright.Drawing;

namespace Loomwright.Tests.Drawing;

/// <summary>Sheets spoilt on purpose: the count of flaws must see each.</summary>
public class FlawsTests
{
    private static readonly Scene Empty = new() { Id = "s", Title = "", About = "", Width = 100, Height = 100, Paper = "A4" };

    [Fact]
    public void Two_wires_beside_each_other_too_near_overlap() =>
        Assert.Equal(1, Flaws.Of(Empty with { Strands = [Wire("a", (0, 10), (90, 10)), Wire("b", (50, 15), (99, 15))] }).Overlaps);

    [Fact]
    public void Two_wires_six_pixels_apart_do_not_overlap() =>
        Assert.True(Flaws.Of(Empty with { Strands = [Wire("a", (0, 10), (90, 10)), Wire("b", (0, 16), (90, 16))] }).None);

    [Fact]
    public void A_wire_that_ends_on_another_touches_it() =>
        Assert.Equal(1, Flaws.Of(Empty with { Strands = [Wire("a", (0, 10), (90, 10)), Wire("b", (50, 10), (50, 80))] }).Touches);

    [Fact]
    public void A_wire_through_a_part_is_seen_and_one_that_ends_at_it_is_fine()
    {
        var part = new Cell("box", new Area(40, 0, 20, 40));
        Assert.Equal(1, Flaws.Of(Empty with { Cells = [part], Strands = [Wire("a", (0, 10), (90, 10))] }).ThroughCells);
        Assert.Equal(0, Flaws.Of(Empty with { Cells = [part], Strands = [Wire("a", (0, 10), (40, 10))] }).ThroughCells);
    }

    [Fact]
    public void A_label_under_another_wire_collides_and_over_its_own_does_not()
    {
        var label = new Lettering("RD 1", new Spot(10, 8), Hold.Start) { Wire = "a" };
        Assert.Equal(0, Flaws.Of(Empty with { Letterings = [label], Strands = [Wire("a", (0, 10), (90, 10))] }).CollidingLabels);
        Assert.Equal(1, Flaws.Of(Empty with { Letterings = [label], Strands = [Wire("b", (0, 5), (90, 5))] }).CollidingLabels);
        Assert.Equal(1, Flaws.Of(Empty with { Letterings = [label, label with { At = new Spot(20, 8) }] }).CollidingLabels);
    }

    [Fact]
    public void A_crossing_is_no_flaw_but_is_counted()
    {
        var flaws = Flaws.Of(Empty with { Strands = [Wire("a", (0, 40), (90, 40)), Wire("b", (50, 0), (50, 80))] });
        Assert.True(flaws.None);
        Assert.Equal((1, 1), (flaws.Crossings, flaws.StraightCrossings));
    }

    private static Strand Wire(string name, params (double X, double Y)[] path) => new(name, new WireColour("RD", null), 1, [.. path.Select(p => new Spot(p.X, p.Y))]);
}
