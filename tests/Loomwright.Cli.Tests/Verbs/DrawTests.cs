using System.Xml.Linq;

namespace Loomwright.Tests.Verbs;

public sealed class DrawTests
{
    private const string Small = """
        loomwright: 1
        name: Lamp on a battery
        parts:
          battery: {kind: battery, chemistry: agm}
          main fuse: {kind: fuse, rating: 5 A}
          lamp: {kind: lamp, filament: 21 W}
        wires:
          - {name: plus, from: battery.+, to: main fuse.1, size: 2.5 mm2, colour: RD}
          - {name: feed, from: main fuse.2, to: lamp.+, size: 0.75 mm2, colour: GN/RD}
          - {name: minus, from: lamp.-, to: battery.-, size: 0.75 mm2, colour: BN}
        """;

    [Fact]
    public void A_small_design_is_drawn_the_same_every_time()
    {
        using var folder = new Folder();
        var file = folder.Write("lamp.loom.yaml", Small);
        Golden.Check("draw/lamp.svg", Called.With("draw", file, "--trials", "30").Out);
    }

    [Fact]
    public void A_drawing_into_a_file_says_its_paper_and_its_crossings()
    {
        using var folder = new Folder();
        var svg = Path.Combine(folder.Path, "bench.svg");
        var called = Called.With("draw", Called.Bench, "--trials", "30", "--out", svg);
        Assert.Equal(ExitCode.Answered, called.Exit);
        Assert.Contains("A4 at 100 %, 14 wires drawn, ", called.Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Equal("svg", XDocument.Load(svg).Root!.Name.LocalName);
    }

    [Fact]
    public void One_function_is_drawn_by_its_name()
    {
        var called = Called.With("draw", Called.Bench, "--function", "Stop  lamp");
        Assert.Equal(ExitCode.Answered, called.Exit);
        Assert.Contains("<title>Kittiwake: stop lamp</title>", called.Out, StringComparison.Ordinal);
    }
}
