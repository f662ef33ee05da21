using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.ProjectFile;

/// <summary>Writes a contact table as measured into a design: into the part of that name, or as a new one.</summary>
internal static class SwitchTable
{
    /// <summary>The edits, and what comes of them. Refused when the part is no switch, or when its wires name leads the table does not have.</summary>
    /// <param name="file">The design before.</param>
    /// <param name="part">Name of the switch.</param>
    /// <param name="leads">Names of its leads.</param>
    /// <param name="positions">Each position in order with the pairs it joins.</param>
    public static (ImmutableArray<Edit> Edits, EditOutcome Outcome) Write(DesignFile file, string part, ImmutableArray<string> leads, IEnumerable<(string Name, ImmutableArray<ImmutableArray<string>> Pairs)> positions)
    {
        var table = new Node.Map([.. positions.Select(p => new Entry(Node.Word(p.Name), List(p.Pairs.Select(pair => List(pair.Select(Node.Word))))))], default, Flow: false);
        var terminals = List(leads.Select(Node.Word));
        var parts = NodePath.Root.Key("parts");
        ImmutableArray<Edit> edits;
        if (file.Loom?.Part(part) is { } known)
        {
            if (known.Kind != "switch")
            {
                return ([], new EditOutcome.Refused($"{known.Name} is a {known.Kind}, and a contact table belongs to a switch", "choose another name for it"));
            }

            edits = [Put(file, parts.Key(part), "terminals", terminals), Put(file, parts.Key(part), "positions", table)];
        }
        else
        {
            var made = new Node.Map([new(Node.Word("kind"), Node.Word("switch")), new(Node.Word("terminals"), terminals), new(Node.Word("positions"), table)], default, Flow: false);
            edits = [Changed.Find(file.Tree.Root, parts) is null
                ? new Edit.AddKey(NodePath.Root, "parts", new Node.Map([new(Node.Word(part), made)], default, Flow: false))
                : new Edit.AddKey(parts, part, made)];
        }

        return (edits, file.Edit(edits) switch
        {
            EditOutcome.Edited made when NewStop(file, DesignFile.Read(made.Text)) is { } stop => new EditOutcome.Refused($"the file then would not hold together: {stop.What}", "call the leads and positions as the file does, or change the file first"),
            var outcome => outcome,
        });
    }

    private static Edit Put(DesignFile file, NodePath part, string key, Node value) =>
        Changed.Find(file.Tree.Root, part.Key(key)) is null ? new Edit.AddKey(part, key, value) : new Edit.Replace(part.Key(key), value);

    private static Finding? NewStop(DesignFile before, DesignFile after) =>
        after.Findings.FirstOrDefault(f => f.Severity == Severity.Stop && !before.Findings.Any(b => b.Code == f.Code && b.What == f.What));

    private static Node.List List(IEnumerable<Node> items) => new([.. items], default, Flow: true);
}
