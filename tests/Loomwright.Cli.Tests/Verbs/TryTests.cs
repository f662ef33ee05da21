using System.Globalization;
using System.Text.Json;

namespace Loomwright.Tests.Verbs;

public sealed class TryTests
{
    private static readonly string[] Ride = ["--set", "lock=riding", "--do", "front brake=pressed", "--wait", "3s"];

    public static TheoryData<string> Gallery => [.. Called.Gallery];

    [Fact]
    public void A_ride_on_the_bench_is_told_step_by_step()
    {
        Golden.Check("try/ride.txt", Called.With(["try", Called.Bench, .. Ride]).Golden);
        Golden.Check("try/ride.json", SixFigures.Of(Called.With(["try", Called.Bench, .. Ride, "--json"]).Out));
    }

    [Fact]
    public void A_flash_shows_both_its_halves() =>
        Golden.Check("try/left.txt", Called.With("try", Called.Bench, "--set", "lock=riding", "--do", "left button", "--wait", "50 s").Golden);

    [Fact]
    public void A_mistake_is_told_beside_the_bike_withdarkit() =>
        Golden.Check("try/stop-lamp-feed-open.txt", Called.With(["try", Called.Bench, .. Ride, "--fault", "open: stop lamp feed"]).Golden);

    [Theory]
    [MemberData(nameof(Gallery))]
    public void A_broken_variant_shows_its_symptom(string file) =>
        Golden.Check($"try/{Called.NameOf(file)}.txt", Called.With("try", file, "--set", "lock=riding").Golden);

    [Fact]
    public void A_machine_is_told_of_relays_of_lamps_taken_to_be_darkand_how_often_a_lamp_flashes()
    {
        static JsonElement Last(params string[] args) => Answered.Read(Called.With(["try", .. args, "--json"])).GetProperty("frames").EnumerateArray().Last();
        static JsonElement Output(JsonElement frame) => frame.GetProperty("controllers").GetProperty("box").GetProperty("outputs").GetProperty("left lamp");
        const string Block = "examples/gallery/kinds/block-by-data-lead.loom.yaml";

        var flashing = Last(Block, "--do", "left block left");
        var dark = Last(Block, "--do", "left block left", "--fault", "open: box X1 to left lamp +");
        Assert.InRange(flashing.GetProperty("seen").GetProperty("left lamp").GetProperty("flashes_per_minute").GetDouble(), 60, 120);
        Assert.Equal(JsonValueKind.Null, dark.GetProperty("seen").GetProperty("left lamp").GetProperty("flashes_per_minute").ValueKind);
        Assert.Equal((false, true), (Output(flashing).GetProperty("lamp_out").GetBoolean(), Output(dark).GetProperty("lamp_out").GetBoolean()));

        const string Relays = "examples/sandpiper/sandpiper.loom.yaml";
        bool Pulled(params string[] args) => Last([Relays, "--set", "lock=riding", .. args]).GetProperty("relays").GetProperty("head relay").GetProperty("pulled_in").GetBoolean();
        Assert.Equal((false, true), (Pulled(), Pulled("--set", "light switch=head")));
    }

    [Fact]
    public void A_fuse_that_blows_is_told_at_its_step_and_ends_with_something_to_look_at()
    {
        var called = Called.With("try", "examples/gallery/lock-joins-feed-and-ground.loom.yaml", "--set", "lock=riding", "--set", "lock=park");
        Golden.Check("try/key-fuse-blows.txt", called.Golden);
        Assert.Equal(ExitCode.Look, called.Exit);
        Assert.Contains("key fuse: whole → blown", called.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_order_on_the_command_line_is_the_order_played()
    {
        var first = Steps("--set", "front brake=pressed", "--wait", "1s", "--set", "lock=riding");
        var last = Steps("--set", "lock=riding", "--wait=1s", "--set=front brake=pressed");
        Assert.Equal(["power connected", "front brake → pressed", "1 s later", "lock → riding"], first);
        Assert.Equal(["power connected", "lock → riding", "1 s later", "front brake → pressed"], last);
    }

    [Fact]
    public void A_name_is_matched_whatever_its_case_and_blanks() =>
        Assert.Equal(["power connected", "front brake → pressed"], Steps("--set", " Front   BRAKE = Pressed "));

    [Theory]
    [InlineData("--set", "front break=pulled", "There is no control front break. Did you mean front brake? The controls are: lock, front brake, left button.\n")]
    [InlineData("--set", "lock=ridin", "lock: There is no position ridin. Did you mean riding? The positions are: off, riding, park.\n")]
    [InlineData("--set", "lock", "--set lock: say where to, as \"lock=park\". The positions are: off, riding, park.\n")]
    [InlineData("--do", "lock", "--do lock: say where to, as \"lock=park\". The positions are: off, riding, park.\n")]
    [InlineData("--do", "lock=", "lock: No position is named. The positions are: off, riding, park.\n")]
    [InlineData("--set", "=riding", "No control is named. The controls are: lock, front brake, left button.\n")]
    [InlineData("--wait", "soon", "--wait soon: it does not begin with a number; write a number with its unit, 200 ms\n")]
    [InlineData("--set", "--do", "--set needs a value after it. See: loomwright try --help\n")]
    [InlineData("--wait", "0s", "--wait 0s: name a time longer than 0 s and at most 24 h\n")]
    [InlineData("--wait", "25h", "--wait 25h: name a time longer than 0 s and at most 24 h\n")]
    public void A_slip_of_the_finger_gets_the_nearest_name_and_the_list(string option, string value, string message)
    {
        var called = Called.With("try", Called.Bench, option, value);
        Assert.Equal(ExitCode.WrongUsage, called.Exit);
        Assert.Equal(message, called.Error);
        Assert.Empty(called.Out);
    }

    [Fact]
    public void A_fault_there_is_not_is_refused_with_a_cure()
    {
        var called = Called.With("try", Called.Bench, "--fault", "open: stop lamp fed");
        Assert.Equal(ExitCode.WrongUsage, called.Exit);
        Assert.Contains("stop lamp feed", called.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_design_read_in_part_is_tried_and_says_what_was_left_out()
    {
        using var folder = new Folder();
        var file = folder.Write("part.loom.yaml", Repository.Read(Called.Bench).Replace("kind: battery", "kind: battery\n    charge: twelve", StringComparison.Ordinal));
        var called = Called.With("try", file, "--set", "lock=riding", "--json");
        Assert.Equal(ExitCode.Look, called.Exit);
        Assert.False(Answered.Read(called).GetProperty("complete").GetBoolean());
        Assert.StartsWith($"{file}:51:", called.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_that_is_no_design_gets_no_answer()
    {
        using var folder = new Folder();
        var file = folder.Write("list.loom.yaml", "- a\n- b\n");
        var called = Called.With("try", file);
        Assert.Equal(ExitCode.Unreadable, called.Exit);
        Assert.Empty(called.Out);
        Assert.StartsWith($"{file}:1:1: ", called.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_wire_answers_by_its_name()
    {
        var frame = Answered.Read(Called.With(["try", Called.Bench, .. Ride, "--json"])).GetProperty("frames").EnumerateArray().Last();
        var wires = frame.GetProperty("phases")[0].GetProperty("wires").EnumerateArray().Select(w => w.GetProperty("wire").GetString()).ToList();
        Assert.Contains("stop lamp feed", wires);
        Assert.Equal(wires.Count, wires.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void No_line_is_wider_than_a_page() =>
        Assert.All(Called.With(["try", Called.Bench, .. Ride, "--fault", "open: stop lamp feed"]).Out.Split('\n'), line => Assert.InRange(new StringInfo(line).LengthInTextElements, 0, 100));

    private static IEnumerable<string> Steps(params string[] script) =>
        Answered.Read(Called.With(["try", Called.Bench, .. script, "--json"])).GetProperty("frames").EnumerateArray().Select(f => f.GetProperty("step").GetString()!);
}
