using System.Collections.Immutable;

namespace Loomwright.ProjectFile;

/// <summary>The tree an edit is meant to give, made from nodes alone; what the editor writes must read back as this.</summary>
internal static class Changed
{
    /// <summary>The changed tree, or null when a path leads nowhere or two edits cannot both be made.</summary>
    public static Node? By(Node root, IEnumerable<Edit> edits)
    {
        // Values first and places in lists last, so that every path still means what it meant before.
        Node? node = root;
        foreach (var edit in edits.OrderBy(e => e switch { Edit.Replace => 0, Edit.AddKey => 1, Edit.AddItem => 2, _ => 3 }).ThenByDescending(LastIndex))
        {
            node = node is null ? null : At(node, edit.At.Steps, 0, edit);
        }

        return node;
    }

    /// <summary>The node at a path, or null.</summary>
    public static Node? Find(Node root, NodePath path)
    {
        Node? node = root;
        foreach (var step in path.Steps)
        {
            node = node switch
            {
                Node.Map map when step.Name is not null => map.Find(step.Name)?.Value,
                Node.List list when step.Index >= 0 && step.Index < list.Items.Length => list.Items[step.Index],
                _ => null,
            };
        }

        return node;
    }

    private static int LastIndex(Edit edit) => edit.At.Steps is [.., var last] ? last.Index : -1;

    private static Node? At(Node node, ImmutableArray<NodePath.Step> steps, int depth, Edit edit)
    {
        if (depth == steps.Length)
        {
            return Here(node, edit);
        }

        var step = steps[depth];
        var removes = edit is Edit.Remove && depth == steps.Length - 1;
        switch (node)
        {
            case Node.Map map when step.Name is not null && map.Find(step.Name) is { } entry:
                var place = map.Entries.IndexOf(entry);
                return removes ? map with { Entries = map.Entries.RemoveAt(place) }
                    : At(entry.Value, steps, depth + 1, edit) is { } value ? map with { Entries = map.Entries.SetItem(place, entry with { Value = value }) } : null;
            case Node.List list when step.Index >= 0 && step.Index < list.Items.Length:
                return removes ? list with { Items = list.Items.RemoveAt(step.Index) }
                    : At(list.Items[step.Index], steps, depth + 1, edit) is { } item ? list with { Items = list.Items.SetItem(step.Index, item) } : null;
            default:
                return null;
        }
    }

    private static Node? Here(Node node, Edit edit) => (edit, node) switch
    {
        (Edit.Replace replace, _) => replace.Value,
        (Edit.AddKey add, Node.Map map) => map.Find(add.Key) is not null ? null : map with { Entries = map.Entries.Insert(add.First ? 0 : map.Entries.Length, EntryOf(add)) },
        (Edit.AddKey add, Node.Scalar { IsEmpty: true }) => new Node.Map([EntryOf(add)], node.Span, Flow: false),
        (Edit.AddItem add, Node.List list) => list with { Items = list.Items.Add(add.Value) },
        (Edit.AddItem add, Node.Scalar { IsEmpty: true }) => new Node.List([add.Value], node.Span, Flow: false),
        _ => null,
    };

    private static Entry EntryOf(Edit.AddKey add) => new(Node.Word(add.Key), add.Value);
}
