using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Finds the replacements for edits: in block style here, inside braces and brackets by <see cref="FlowEdits"/>.</summary>
internal sealed class BlockEdits(Tree tree)
{
    private readonly string _text = tree.Text.Content;
    private readonly Lines _lines = new(tree.Text.Content);

    /// <summary>In file order, or null when an edit cannot be expressed.</summary>
    public ImmutableArray<Replacement>? Replacements(IReadOnlyList<Edit> edits)
    {
        var made = new List<Replacement>();
        foreach (var group in edits.GroupBy(e => FlowAround(e)))
        {
            if (group.Key is { } flow)
            {
                made.AddRange(new FlowEdits(tree, _lines).Replacements(flow, [.. group]));
                continue;
            }

            foreach (var edit in group)
            {
                if (One(edit) is not { } replacements)
                {
                    return null;
                }

                made.AddRange(replacements);
            }
        }

        return [.. made.OrderBy(r => r.Span.Start)];
    }

    // The outermost braces or brackets the edit reaches into; null when it is all in block style.
    private NodePath? FlowAround(Edit edit)
    {
        var path = NodePath.Root;
        var touched = edit is Edit.AddKey or Edit.AddItem ? edit.At.Steps : edit.At.Parent.Steps;
        for (var depth = 0; ; depth++)
        {
            if (Changed.Find(tree.Root, path) is Node.Map { Flow: true } or Node.List { Flow: true })
            {
                return path;
            }

            if (depth == touched.Length)
            {
                return null;
            }

            path = touched[depth].Name is { } name ? path.Key(name) : path.Item(touched[depth].Index);
        }
    }

    private Replacement[]? One(Edit edit)
    {
        var node = Changed.Find(tree.Root, edit.At)!;
        return edit switch
        {
            Edit.Replace replace => Replace(replace.At, node, replace.Value),
            Edit.AddKey add when node is Node.Scalar => Replace(add.At, node, new Node.Map([new Entry(Node.Word(add.Key), add.Value)], default, Flow: false)),
            Edit.AddKey add => [AddKey((Node.Map)node, add)],
            Edit.AddItem add when node is Node.Scalar => Replace(add.At, node, new Node.List([add.Value], default, Flow: false)),
            Edit.AddItem add => [AddItem((Node.List)node, add)],
            Edit.Remove remove => Remove(remove.At),
            _ => null,
        };
    }

    private Replacement[] Replace(NodePath path, Node old, Node value)
    {
        if (Changed.Find(tree.Root, path.Parent) is Node.Map map)
        {
            return UnderKey(map.Find(path.Steps[^1].Name!)!.Key, old, value);
        }

        var column = _lines.ColumnOf(Dash(old)) + 2;
        return old.Span.Length == 0
            ? [new Replacement(old.Span, " " + Writer.Lines(value, column, _lines.End))]
            : [new Replacement(old.Span, Writer.Lines(value, _lines.ColumnOf(old.Span.Start), _lines.End))];
    }

    // What stands on the key's line behind the value, or between the key and lines below it, is the owner's comment and stays.
    private Replacement[] UnderKey(Node.Scalar key, Node old, Node value)
    {
        var written = Writer.AfterColon(value, _lines.ColumnOf(key.Span.Start), _lines.End);
        var colon = _text.IndexOf(':', key.Span.End) + 1;
        var becomesLines = written[0] != ' ';
        if (!OnKeyLine(key, old))
        {
            var above = _lines.EndOfPrevious(old.Span.Start);
            return becomesLines
                ? [Lower(old, value, Math.Max(_lines.ColumnOf(old.Span.Start), _lines.ColumnOf(key.Span.Start) + 2))]
                : [new Replacement(new Span(colon, 0), written), new Replacement(new Span(above, old.Span.End - above), "")];
        }

        if (old.Span.Length == 0)
        {
            return [new Replacement(new Span(becomesLines ? _lines.EndOf(colon) : colon, 0), written)];
        }

        return becomesLines
            ? [new Replacement(new Span(colon, old.Span.End - colon), written)]
            : [new Replacement(old.Span, written[1..])];
    }

    // A list may stand at the column of its key; what takes its place may not.
    private Replacement Lower(Node old, Node value, int column)
    {
        var from = _lines.StartOf(old.Span.Start);
        return new Replacement(new Span(from, old.Span.End - from), new string(' ', column) + Writer.Lines(value, column, _lines.End));
    }

    private bool OnKeyLine(Node.Scalar key, Node value) => _lines.StartOf(value.Span.Start) == _lines.StartOf(key.Span.Start);

    private Replacement AddKey(Node.Map map, Edit.AddKey add)
    {
        var column = _lines.ColumnOf(map.Entries[0].Key.Span.Start);
        var written = Writer.Word(add.Key, inFlow: false) + ":" + Writer.AfterColon(add.Value, column, _lines.End);
        return add.First
            ? new Replacement(new Span(map.Entries[0].Key.Span.Start, 0), written + _lines.End + new string(' ', column))
            : Below(map.Entries[^1].Span.End, column, written);
    }

    private Replacement AddItem(Node.List list, Edit.AddItem add)
    {
        var column = _lines.ColumnOf(Dash(list.Items[0]));
        return Below(list.Items[^1].Span.End, column, "- " + Writer.Lines(add.Value, column + 2, _lines.End));
    }

    // On a line of its own below the one that holds the offset.
    private Replacement Below(int offset, int column, string written) =>
        new(new Span(_lines.EndOf(offset), 0), _lines.End + new string(' ', column) + written);

    private int Dash(Node item) => _text.LastIndexOf('-', item.Span.Start - 1);

    private Replacement[]? Remove(NodePath path)
    {
        var parent = Changed.Find(tree.Root, path.Parent)!;
        var (starts, ends, index) = parent switch
        {
            Node.Map map => (map.Entries.Select(e => e.Key.Span.Start).ToList(), map.Entries.Select(e => e.Span.End).ToList(), map.Entries.IndexOf(map.Find(path.Steps[^1].Name!)!)),
            Node.List list => (list.Items.Select(Dash).ToList(), [.. list.Items.Select(i => i.Span.End)], path.Steps[^1].Index),
            _ => ([], [], -1),
        };
        if (starts.Count == 1)
        {
            // Nothing would be left to tell an empty list or map from nothing at all.
            Node empty = parent is Node.List ? new Node.List([], default, Flow: true) : new Node.Map([], default, Flow: true);
            return path.Parent == NodePath.Root ? null : Replace(path.Parent, parent, empty);
        }

        var (start, end) = (starts[index], ends[index]);
        if (_lines.IsFirst(start))
        {
            return [new Replacement(_lines.Whole(new Span(start, end - start)), "")];
        }

        // It shares its line with the dash of its list: the next one moves up, or the dash stands alone above comments.
        var next = starts[index + 1];
        var nextLine = _lines.NextAfter(end);
        var from = _lines.BackOverBlanks(start);
        return nextLine == _lines.StartOf(next)
            ? [new Replacement(new Span(start, next - start), "")]
            : [new Replacement(new Span(from, _lines.EndOf(end) - from), "")];
    }
}
