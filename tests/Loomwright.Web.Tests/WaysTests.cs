using Loomwright.Drawing;
using Loomwright.Text;
using Loomwright.Web.Lines;
using Loomwright.Web.Try;

namespace Loomwright.Web.Tests;

public sealed class WaysTests
{
    [Fact]
    public void A_lamp_s_line_runs_from_plus_through_fuse_and_output_to_minus()
    {
        var line = LoadLine.All(Kittiwake.Bike.Loom!).First(l => l.Sight == "rear cluster.stop");

        Assert.Equal(["battery", "main fuse", "box", "rear cluster", "tail stud", "ground bar", "battery"], line.Stations.Select(s => s.Part.Name));
        Assert.Equal("X4", line.Stations[2].Out.Terminal);
        Assert.Equal(["battery plus", "box supply", "stop lamp feed", "rear cluster ground", "tail ground", "battery minus"], line.Wires.Select(w => w?.Name));
    }

    [Fact]
    public void A_lamp_whose_ground_nobody_drew_has_no_line()
    {
        var loom = Kittiwake.Bike.Loom!;

        var lines = LoadLine.All(loom with { Wires = loom.Wires.RemoveAll(w => w.Name == "rear cluster ground") });

        Assert.Empty(lines.First(l => l.Sight == "rear cluster.stop").Stations);
        Assert.NotEmpty(lines.First(l => l.Sight == "left rear indicator").Stations);
    }

    [Fact]
    public void A_relay_s_contact_and_the_frame_are_stations_like_any_other()
    {
        var bike = Bike.Read(new SourceText("typed here", FrameAndRelay));
        var session = Session.Start(bike)!;

        var line = LoadLine.All(bike.Loom!).Single();
        Assert.Equal(["battery", "main fuse", "horn relay", "horn", "frame", "battery"], line.Stations.Select(s => s.Part.Name));
        Assert.Equal(["battery plus", "relay feed", "horn feed", null, "frame strap"], line.Wires.Select(w => w?.Name));

        Assert.Equal("switch-open", Sign());
        session.Do(new Simulation.Operation.Set("horn button", "pressed"));
        Assert.Equal("switch-closed", Sign());
        Assert.Equal("horn-sounds", Says.Picture(session.View.Now.Seen[0].Symbol));

        string Sign() => StationSign.Of(line.Stations[2], session.View, session.View.Now.Seen[0]);
    }

    private const string FrameAndRelay = """
        loomwright: 1
        name: Horn by relay
        parts:
          battery:
            kind: battery
            chemistry: agm
          main fuse:
            kind: fuse
            rating: 15 A
          horn relay:
            kind: relay
          horn button:
            kind: button
          horn:
            kind: horn
            mounted on: frame
          frame:
            kind: ground body
            body: frame
        wires:
          - {name: battery plus, from: battery.+, to: main fuse.1, size: 2.5 mm2, length: 0.2 m}
          - {name: relay feed, from: main fuse.2, to: horn relay.30, size: 1 mm2, length: 0.5 m}
          - {name: coil feed, from: main fuse.2, to: horn relay.86, size: 0.5 mm2, length: 0.5 m}
          - {name: coil ground, from: horn relay.85, to: horn button.1, size: 0.5 mm2, length: 1 m}
          - {name: button ground, from: horn button.2, to: frame, size: 0.5 mm2, length: 0.3 m}
          - {name: horn feed, from: horn relay.87, to: horn.1, size: 1 mm2, length: 0.6 m}
          - {name: frame strap, from: frame, to: battery.-, size: 4 mm2, length: 0.4 m}
        """;
}
