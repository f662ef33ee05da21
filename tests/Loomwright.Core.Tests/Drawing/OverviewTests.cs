using Loomwright.Drawing;

namespace Loomwright.Tests.Drawing;

public class OverviewTests
{
    private const int FewTrials = 60;

    public static TheoryData<string> Bikes => ["kittiwake-bench", "sandpiper", "kittiwake"];

    [Theory]
    [MemberData(nameof(Bikes))]
    public void No_wire_overlaps_touches_or_runs_through_a_part_and_no_label_collides(string bike)
    {
        var scene = Sheets.Overview(Examples.Read($"examples/{bike}/{bike}.loom.yaml"), FewTrials);
        var flaws = Flaws.Of(scene);
        TestContext.Current.TestOutputHelper?.WriteLine($"{bike}: {flaws}");
        Assert.Equal((0, 0, 0, 0, 0), (flaws.Overlaps, flaws.Touches, flaws.ThroughCells, flaws.CollidingLabels, flaws.Unrouted));
    }
}
