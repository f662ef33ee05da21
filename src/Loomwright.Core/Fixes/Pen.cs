using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.ProjectFile;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Fixes;

/// <summary>A design, all that was found in it, and how to write changes of it.</summary>
internal sealed record Pen(Study Study, DesignFile File, ImmutableArray<Finding> Findings)
{
    public Loom Loom => Study.Loom;

    /// <summary>Puts an end of a wire on another terminal.</summary>
    public Edit End(Wire wire, TerminalRef end, TerminalRef to) => new Edit.Replace(At(wire).Key(wire.From == end ? "from" : "to"), Node.Word(to.ToString()));

    /// <summary>Gives a wire another cross-section.</summary>
    public Edit Size(Wire wire, CrossSection size) => new Edit.Replace(At(wire).Key("size"), Node.Word(Written(size)));

    /// <summary>Draws a wire more. Its length is worked out from the places and told as such; without places it is the one given.</summary>
    public Edit AddWire(TerminalRef from, TerminalRef to, CrossSection size, Length otherwise)
    {
        Entry[] told = [Word("from", from.ToString()), Word("to", to.ToString()), Word("size", Written(size))];
        return new Edit.AddItem(NodePath.Root.Key("wires"), new Node.Map([.. KnowsTheWay(from, to) ? told : told.Append(Word("length", otherwise.ToString()))], default, Flow: false));
    }

    /// <summary>Sets something of a part, by the keys down to it; the keys above the last are there.</summary>
    public Edit Setting(string part, string value, params ReadOnlySpan<string> keys)
    {
        var above = NodePath.Root.Key("parts").Key(part);
        foreach (var key in keys[..^1])
        {
            above = above.Key(key);
        }

        return Changed.Find(File.Tree.Root, above.Key(keys[^1])) is null ? new Edit.AddKey(above, keys[^1], Node.Word(value)) : new Edit.Replace(above.Key(keys[^1]), Node.Word(value));
    }

    /// <summary>Names a lead as capped and not used.</summary>
    public Edit Unused(TerminalRef lead)
    {
        var part = NodePath.Root.Key("parts").Key(lead.Part);
        var list = new Node.List([Node.Word(lead.Terminal)], default, Flow: true);
        return Changed.Find(File.Tree.Root, part.Key("unused")) switch
        {
            null => new Edit.AddKey(part, "unused", list),
            Node.List { Items.IsEmpty: false } => new Edit.AddItem(part.Key("unused"), Node.Word(lead.Terminal)),
            Node.Scalar { IsEmpty: false } one => new Edit.Replace(part.Key("unused"), new Node.List([Node.Word(one.Text), .. list.Items], default, Flow: true)),
            _ => new Edit.Replace(part.Key("unused"), list),
        };
    }

    /// <summary>The wires that end on a terminal, in file order.</summary>
    public ImmutableArray<Wire> On(TerminalRef terminal) => [.. Loom.Wires.Where(w => w.From == terminal || w.To == terminal)];

    private bool KnowsTheWay(TerminalRef from, TerminalRef to) => Loom.Part(from.Part)?.Place is { } a && Loom.Part(to.Part)?.Place is { } b
        && (Names.Same(a, b) || (Loom.Distances.Any(d => Names.Same(d.A, a) || Names.Same(d.B, a)) && Loom.Distances.Any(d => Names.Same(d.A, b) || Names.Same(d.B, b))));

    private NodePath At(Wire wire) => File.WirePath(wire.Name)!;

    private static Entry Word(string key, string value) => new(Node.Word(key), Node.Word(value));

    private static string Written(CrossSection size) => string.Create(CultureInfo.InvariantCulture, $"{size.SquareMillimetres:0.##} mm2");
}

/// <summary>A cure before it has its id: a verb and what it is about, its title and its edits.</summary>
internal sealed record Cure(string Verb, string About, string Title, ImmutableArray<Edit> Edits);
