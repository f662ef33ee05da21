using Loomwright.Design;
using Loomwright.Walk;

namespace Loomwright.Tests.Walk;

public class WireRemovedTests
{
    private static readonly Loom Sound = Planted.Loom("sound");

    public static TheoryData<string> WiresOfTheExample => [.. Examples.Kittiwake.Wires.Select(w => w.Name)];

    [Theory]
    [MemberData(nameof(WiresOfTheExample))]
    public void A_wire_left_out_of_the_example_is_noticed(string wire)
    {
        var removed = Removed(Examples.Kittiwake, wire);
        Assert.NotNull(removed.Surprise);
        Assert.Null(removed.Reason);
    }

    [Theory]
    [InlineData("kittiwake", 4)]
    [InlineData("sandpiper", 6)]
    public void Of_the_whole_examples_a_sample_is_noticed_or_has_its_reason(string example, int count)
    {
        var loom = Examples.Read($"examples/{example}/{example}.loom.yaml");
        var dice = new Random(1);
        foreach (var wire in Enumerable.Range(0, count).Select(_ => loom.Wires[dice.Next(loom.Wires.Length)].Name))
        {
            var removed = Removed(loom, wire);
            Assert.True(removed.Surprise is not null || (removed.Reason is not null && removed.End == WalkEnd.Complete), wire);
        }
    }

    [Fact]
    public void A_wire_beside_which_metal_touches_metal_is_doubled_by_it()
    {
        var removed = Removed(Examples.Read("examples/sandpiper/sandpiper.loom.yaml"), "engine strap");
        Assert.Equal("doubled: metal on metal joins engine block and frame as well", removed.Reason);
    }

    [Fact]
    public void A_lamps_feed_left_out_is_noticed_where_the_lamp_should_light()
    {
        var removed = Removed(Sound, "box X4 to stop lamp feed");
        Assert.Equal((SurpriseKind.ShowsNothing, "stop"), (removed.Surprise!.Kind, removed.Surprise.Function));
        Assert.Equal(2, removed.Surprise.Steps.Length);
    }

    [Theory]
    [InlineData("ground bar", "battery.-", "doubled: other wires join ground bar and battery.-")]
    [InlineData("box.X1", "stop lamp.spare", "spare: nothing else is at stop lamp.spare")]
    [InlineData("ground bar", "left indicator.plate", "capped: left indicator.plate is not used")]
    public void A_wire_without_effect_is_named_with_its_reason(string from, string to, string reason)
    {
        var wire = Sound.Wires[0] with { Name = "one more", From = At(from), To = At(to) };
        var indicator = Sound.Part("left indicator")!;
        var loom = Sound with
        {
            Wires = Sound.Wires.Add(wire),
            Parts = Sound.Parts.Replace(indicator, indicator with { Settings = indicator.Settings.With("leads", Words("feed", "plate", "ground")).With("unused", Words("plate")) }),
        };

        var removed = Removed(loom, "one more");
        Assert.Null(removed.Surprise);
        Assert.Equal(WalkEnd.Complete, removed.End);
        Assert.Equal(reason, removed.Reason);
    }

    private static Value.Words Words(params string[] names) => new Value.Words([.. names]);

    private static TerminalRef At(string terminal) => Simulation.Sketch.At(terminal);

    private static WireRemoved Removed(Loom loom, string wire) => WireRemoved.Of(loom, loom.Wire(wire)!, new WalkOptions());
}
