using System.Globalization;
using Loomwright.Live;
using Loomwright.ProjectFile;

namespace Loomwright.Tests.Live;

/// <summary>A small design on the disk, opened live; and ways to say what to change in it.</summary>
internal sealed class Paper : IDisposable
{
    public const string Name = "b.loom.yaml";

    public const string Text = """
        loomwright: 1
        name: paper   # kept
        parts:
          a0: {kind: lamp, notes: left}
          a1: {kind: lamp, notes: offside}
        wires:
          - {name: w0, from: a0, to: a1, size: "1"}
          - {name: w1, from: a1, to: a0, size: "1"}

        """;

    private readonly Folder _folder = new();
    private readonly LiveFolder _live;

    public Paper(string text = Text)
    {
        File = _folder.Write(Name, text);
        _live = new LiveFolder(_folder.Path);
    }

    public string File { get; }

    public string Folder => _folder.Path;

    public LiveDocument Document => _live.Find(Name)!;

    public string OnDisk => System.IO.File.ReadAllText(File);

    public static Edit Note(string part, string note) => new Edit.Replace(NodePath.Root.Key("parts").Key(part).Key("notes"), Node.Word(note));

    public static Edit Part(string part, string note) => new Edit.AddKey(NodePath.Root.Key("parts"), part, Map(("kind", "lamp"), ("notes", note)));

    public static Edit NoPart(string part) => new Edit.Remove(NodePath.Root.Key("parts").Key(part));

    public static Edit Size(int wire, string size) => new Edit.Replace(NodePath.Root.Key("wires").Item(wire).Key("size"), Node.Word(size));

    public static Edit Wire(string name) => new Edit.AddItem(NodePath.Root.Key("wires"), Map(("name", name), ("from", "a0"), ("to", "a1"), ("size", "1")));

    public static Edit NoWire(int wire) => new Edit.Remove(NodePath.Root.Key("wires").Item(wire));

    public static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    public void Dispose()
    {
        _live.Dispose();
        _folder.Dispose();
    }

    private static Node.Map Map(params (string Key, string Value)[] entries) =>
        new([.. entries.Select(e => new Entry(Node.Word(e.Key), Node.Word(e.Value)))], default, Flow: true);
}
