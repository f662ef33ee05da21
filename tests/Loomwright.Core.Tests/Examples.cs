using Loomwright.Design;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Tests;

/// <summary>The example files as looms.</summary>
internal static class Examples
{
    public static Loom Kittiwake { get; } = Read("examples/kittiwake-bench/kittiwake-bench.loom.yaml");

    public static Loom Gallery(string name) => Read($"examples/gallery/{name}.loom.yaml");

    public static Loom Read(string path) => Of(Repository.Read(path));

    public static Loom Of(string text)
    {
        var file = DesignFile.Read(new SourceText("sample", text));
        return file.IsComplete ? file.Loom! : throw new InvalidOperationException("the sample cannot be read: " + string.Join("; ", file.Findings.Select(f => f.What)));
    }

    public static Loom Without(this Loom loom, string wire) => loom with { Wires = loom.Wires.RemoveAll(w => Names.Same(w.Name, wire)) };
}
