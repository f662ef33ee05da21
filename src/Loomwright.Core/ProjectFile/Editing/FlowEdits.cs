using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Edits inside braces or brackets: in place while they stay short and hold no comment, else the whole of them rewritten as block.</summary>
internal sealed class FlowEdits(Tree tree, Lines lines)
{
    private readonly string _text = tree.Text.Content;

    public ImmutableArray<Replacement> Replacements(NodePath path, ImmutableArray<Edit> edits)
    {
        var old = Changed.Find(tree.Root, path)!;
        var inside = edits.Select(e => e with { At = Below(e.At, path.Steps.Length) }).ToList();
        var value = Changed.By(old, inside)!;
        var line = Writer.Flow(value);
        var written = _text.AsSpan(old.Span.Start, old.Span.Length);
        var isPlain = written.IndexOfAny("\n\r") < 0;
        return isPlain && lines.ColumnOf(old.Span.Start) + line.Length <= Writer.Widest && InPlace(path, edits) is { } made
            ? made
            : [new FlowToBlock(tree, lines).Rewrite(path, old, value)];
    }

    private static NodePath Below(NodePath path, int from)
    {
        var below = NodePath.Root;
        foreach (var step in path.Steps.Skip(from))
        {
            below = step.Name is { } name ? below.Key(name) : below.Item(step.Index);
        }

        return below;
    }

    private ImmutableArray<Replacement>? InPlace(NodePath path, ImmutableArray<Edit> edits)
    {
        // Several changes to one line of braces meet at its commas, so they are written as one.
        if (edits.Length > 1)
        {
            return null;
        }

        var node = Changed.Find(tree.Root, edits[0].At)!;
        return edits[0] switch
        {
            Edit.Replace replace when node.Span.Length > 0 => [new Replacement(node.Span, Writer.Flow(replace.Value))],
            Edit.AddKey add when node is Node.Map map => [Add(map.Span, map.Entries.Select(e => e.Span), $"{Writer.Word(add.Key, inFlow: true)}: {Writer.Flow(add.Value)}", add.First)],
            Edit.AddItem add when node is Node.List list => [Add(list.Span, list.Items.Select(i => i.Span), Writer.Flow(add.Value), first: false)],
            Edit.Remove remove => Remove(Changed.Find(tree.Root, remove.At.Parent)!, remove.At.Steps[^1]),
            _ => null,
        };
    }

    private static Replacement Add(Span whole, IEnumerable<Span> pieces, string written, bool first)
    {
        var spans = pieces.ToList();
        return spans.Count == 0 ? new Replacement(new Span(whole.Start + 1, whole.Length - 2), written)
            : first ? new Replacement(new Span(spans[0].Start, 0), written + ", ")
            : new Replacement(new Span(spans[^1].End, 0), ", " + written);
    }

    private static ImmutableArray<Replacement>? Remove(Node parent, NodePath.Step step)
    {
        var spans = parent switch
        {
            Node.Map map => map.Entries.Select(e => e.Span).ToList(),
            Node.List list => [.. list.Items.Select(i => i.Span)],
            _ => [],
        };
        var index = parent is Node.Map of ? of.Entries.IndexOf(of.Find(step.Name!)!) : step.Index;
        return index + 1 < spans.Count ? [new Replacement(new Span(spans[index].Start, spans[index + 1].Start - spans[index].Start), "")]
            : index > 0 ? [new Replacement(new Span(spans[index - 1].End, spans[index].End - spans[index - 1].End), "")]
            : [new Replacement(spans[index], "")];
    }
}
