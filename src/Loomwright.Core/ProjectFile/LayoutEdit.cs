using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;

namespace Loomwright.ProjectFile;

/// <summary>Writes where the boxes of the picture stand: one line each.</summary>
internal static class LayoutEdit
{
    private const string Section = "layout";

    /// <summary>The edits that make the file say so; lines that say it already are not touched.</summary>
    public static ImmutableArray<Edit> Of(Tree tree, Placing placing)
    {
        var lines = Lines(placing);
        if (tree.Root.Find(Section) is not { } section)
        {
            return [new Edit.AddKey(NodePath.Root, Section, lines)];
        }

        var at = NodePath.Root.Key(section.Key.Text);
        if (section.Value is not Node.Map old || old.Entries.IsEmpty || lines.Entries.Length < old.Entries.Length || !old.Entries.Zip(lines.Entries).All(p => Text.Names.Same(p.First.Key.Text, p.Second.Key.Text)))
        {
            return [new Edit.Replace(at, lines)];
        }

        return
        [
            .. old.Entries.Zip(lines.Entries).Where(p => !p.First.Value.SaysTheSame(p.Second.Value)).Select(p => new Edit.Replace(at.Key(p.First.Key.Text), p.Second.Value)),
            .. lines.Entries.Skip(old.Entries.Length).Select(e => new Edit.AddKey(at, e.Key.Text, e.Value)),
        ];
    }

    private static Node.Map Lines(Placing placing)
    {
        var arranged = placing.Arranged is { } a ? new[] { Line(LayoutReader.ArrangedKey, a.Wires, a.Boxes, a.SpineTop, a.SpineFoot) } : [];
        var boxes = placing.Boxes.Select(b => b.From is { } from ? Line(b.Part, b.X, b.Y, from.X, from.Y) : Line(b.Part, b.X, b.Y));
        return new Node.Map([.. arranged, .. boxes], default, Flow: false);
    }

    private static Entry Line(string key, params ReadOnlySpan<int> numbers)
    {
        var list = ImmutableArray.CreateBuilder<Node>();
        foreach (var number in numbers)
        {
            list.Add(Node.Word(number.ToString(CultureInfo.InvariantCulture)));
        }

        return new Entry(Node.Word(key), new Node.List(list.ToImmutable(), default, Flow: true));
    }
}
