using Loomwright.Web.Lines;

namespace Loomwright.Web.Tests;

public sealed class WaysTests
{
    [Fact]
    public void A_lamp_s_line_runs_from_plus_through_fuse_and_output_to_minus()
    {
        var line = Ways.Of(Kittiwake.Bike.Loom!).First(l => l.Sight == "rear cluster.stop");

        Assert.Equal(["battery", "main fuse", "box", "rear cluster", "tail stud", "ground bar", "battery"], line.Stations.Select(s => s.Part.Name));
        Assert.Equal("X4", line.Stations[2].Out.Terminal);
        Assert.Equal(["battery plus", "box supply", "stop lamp feed", "rear cluster ground", "tail ground", "battery minus"], line.Wires.Select(w => w.Name));
    }

    [Fact]
    public void A_lamp_whose_ground_nobody_drew_has_no_line()
    {
        var loom = Kittiwake.Bike.Loom!;

        var lines = Ways.Of(loom with { Wires = loom.Wires.RemoveAll(w => w.Name == "rear cluster ground") });

        Assert.Empty(lines.First(l => l.Sight == "rear cluster.stop").Stations);
        Assert.NotEmpty(lines.First(l => l.Sight == "left rear indicator").Stations);
    }
}
