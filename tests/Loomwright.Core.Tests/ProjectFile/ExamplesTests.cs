using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Loomwright.Findings;
using Loomwright.ProjectFile;

namespace Loomwright.Tests.ProjectFile;

public sealed class ExamplesTests
{
    public static TheoryData<string> Examples =>
        [.. Directory.GetFiles(Path.Combine(Pages.Root(), "examples"), "*.loom.yaml", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Pages.Root(), f).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    private static readonly JsonSchema Schema = JsonSchema.FromText(DesignSchema.Text());

    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_is_read_whole_with_honest_notes_at_the_most(string path)
    {
        var file = Written.File(Pages.Read(path));
        Assert.True(file.IsComplete);
        Assert.Equal("", Written.Shown(file.Text, file.Findings.Where(f => f.Severity > Severity.Note)));
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_fits_the_published_schema(string path) =>
        Assert.True(Fits(Pages.Read(path)));

    [Theory]
    [InlineData("loomwright: 1\nname: x\n", true)]
    [InlineData("loomwright: 1\nname: x\nx-mine: {a: [1]}\n", true)]
    [InlineData("loomwright: 2\nname: x\n", false)]
    [InlineData("loomwright: 1\n", false)]
    [InlineData("loomwright: 1\nname: x\nnaem: y\n", false)]
    [InlineData("loomwright: 1\nname: x\nparts:\n  a: {kind: fuse, rating: 5 A}\n", true)]
    [InlineData("loomwright: 1\nname: x\nparts:\n  a: {kind: fuse}\n", false)]
    [InlineData("loomwright: 1\nname: x\nparts:\n  a: {kind: fuse, rating: 5 V}\n", false)]
    [InlineData("loomwright: 1\nname: x\nparts:\n  a.b: {kind: fuse, rating: 5 A}\n", false)]
    [InlineData("loomwright: 1\nname: x\nparts:\n  a: {kind: fuze, rating: 5 A}\n", false)]
    [InlineData("loomwright: 1\nname: x\nparts:\n  a: {kind: fuse, rating: 5 A, current: 2 A}\n", false)]
    [InlineData("loomwright: 1\nname: x\nwires:\n  - {from: a.1, to: b.1}\n", false)]
    public void The_schema_tells_right_shapes_from_wrong_ones(string content, bool fits) => Assert.Equal(fits, Fits(content));

    [Fact]
    public void The_published_schema_is_the_one_the_declarations_give()
    {
        var published = Path.Combine(Pages.Root(), "docs/schemas/design.schema.json");
        if (Environment.GetEnvironmentVariable("UPDATE_GOLDEN") == "1" && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI")))
        {
            File.WriteAllText(published, DesignSchema.Text());
        }

        Assert.True(DesignSchema.Text() == File.ReadAllText(published).ReplaceLineEndings("\n"), "docs/schemas/design.schema.json is not up to date; UPDATE_GOLDEN=1 writes it");
    }

    [Fact]
    public void The_first_example_is_the_bench_of_the_beach_patrol_runabout()
    {
        var loom = Written.File(Pages.Read("examples/kittiwake-bench/kittiwake-bench.loom.yaml")).Loom!;
        Assert.Equal("Kittiwake", loom.Name);
        Assert.Equal(12, loom.Parts.Length);
        Assert.Equal(18, loom.Wires.Length);
        Assert.Equal(["tail lamp", "stop lamp", "left indicator"], loom.Functions.Select(f => f.Name));
        Assert.Equal(1.21, loom.Wire("steering ground")!.Length.Metres, 1e-9);
        Assert.All(loom.Wires, w => Assert.NotNull(w.Colour));
    }

    private static bool Fits(string content)
    {
        using var json = JsonDocument.Parse(Json(Written.Tree(content).Root)!.ToJsonString());
        return Schema.Evaluate(json.RootElement).IsValid;
    }

    internal static JsonNode? Json(Node node) => node switch
    {
        Node.Scalar { IsEmpty: true } => null,
        Node.Scalar word => word.Text,
        Node.List list => new JsonArray([.. list.Items.Select(Json)]),
        Node.Map map => new JsonObject(map.Entries.Select(e => KeyValuePair.Create(e.Key.Text, Json(e.Value)))),
        _ => throw new ArgumentOutOfRangeException(nameof(node)),
    };
}
