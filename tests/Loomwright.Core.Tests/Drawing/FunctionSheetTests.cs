using Loomwright.Design;
using Loomwright.Drawing;

namespace Loomwright.Tests.Drawing;

public class FunctionSheetTests
{
    public static TheoryData<string> Bikes => ["kittiwake-bench", "sandpiper", "kittiwake"];

    [Theory]
    [MemberData(nameof(Bikes))]
    public void No_sheet_of_any_function_has_a_flaw(string bike)
    {
        var loom = Read(bike);
        Assert.All(loom.Functions, f => Assert.True(Flaws.Of(Sheets.Function(loom, f)).None, f.Name));
    }

    [Fact]
    public void The_line_of_a_lamp_runs_from_plus_through_fuse_box_and_lamp_to_minus() =>
        Assert.Equal(
            ["battery plus", "box supply", "stop lamp feed", "rear cluster ground", "tail ground", "battery minus"],
            Line(Examples.Kittiwake, "stop lamp", 0));

    [Fact]
    public void The_line_that_asks_for_it_is_the_one_the_brake_pulls_to_ground() =>
        Assert.Contains(Enumerable.Range(1, 2), i => Line(Examples.Kittiwake, "stop lamp", i) is ["front brake signal", "front brake ground", "steering ground", "battery minus"]);

    [Fact]
    public void A_relay_on_the_way_gets_a_line_for_its_coil()
    {
        var captions = Captions(Read("sandpiper"), "horn");
        Assert.Equal(["1   horn: its own current", "2   what pulls in the horn relay"], captions.Where(c => char.IsDigit(c[0])));
    }

    [Fact]
    public void A_lamp_whose_ground_is_left_out_is_said_to_have_no_way()
    {
        var captions = Captions(Examples.Kittiwake.Without("rear cluster ground"), "stop lamp");
        Assert.Contains("rear cluster.stop: its own current: told over a data lead, or not wired all the way", captions);
    }

    [Fact]
    public void The_bands_stand_in_the_order_of_the_current() =>
        Assert.Equal(
            ["feed", "protection", "switch", "load", "return"],
            Sheet(Examples.Kittiwake, "stop lamp").Letterings.Where(l => l.Size > 22 && l.Wire is null).OrderBy(l => l.At.X).Select(l => l.Text));

    private static Loom Read(string bike) => Examples.Read($"examples/{bike}/{bike}.loom.yaml");

    private static Scene Sheet(Loom loom, string function) => Sheets.Function(loom, loom.Functions.Single(f => f.Name == function));

    private static List<string> Captions(Loom loom, string function) => [.. Sheet(loom, function).Letterings.Where(l => l.Size == 19 && l.Hold == Hold.Start).Select(l => l.Text)];

    // The wires of a line from left to right.
    private static string[] Line(Loom loom, string function, int index)
    {
        var lines = Sheet(loom, function).Strands.GroupBy(s => s.Path[0].Y).OrderBy(g => g.Key).ToList();
        return [.. lines[index].OrderBy(s => s.Path.Min(p => p.X)).Select(s => s.Wire)];
    }
}
