using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>A design file as read: the loom it describes, and everything that is wrong with it, each at its place.</summary>
public sealed class DesignFile
{
    private readonly Places _places;

    internal DesignFile(Tree tree, Loom? loom, ImmutableArray<Finding> findings, Places places)
    {
        Tree = tree;
        Loom = loom;
        Findings = findings;
        _places = places;
    }

    /// <summary>What the file describes, as far as it could be read; null when nothing could, and then there is a finding that stops.</summary>
    public Loom? Loom { get; }

    /// <summary>True when every word of the file is in <see cref="Loom"/>: nothing stopped the reading of any part of it.</summary>
    public bool IsComplete => Loom is not null && Findings.All(f => f.Severity != Severity.Stop);

    /// <summary>In file order, each about a stretch of the text.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>The file's nodes with their places; edits begin here.</summary>
    public Tree Tree { get; }

    /// <summary>The text it was read from.</summary>
    public SourceText Text => Tree.Text;

    /// <summary>Where in the file a subject is told, or null when it is not in the file.</summary>
    public Span? Place(Subject subject) => _places.Of(subject);

    /// <summary>Where a wire stands in <see cref="Tree"/>, or null when there is none of that name.</summary>
    public NodePath? WirePath(string wire) => _places.PathOf(wire);

    /// <summary>
    /// Makes all edits or none. A wire whose derived name would change by them gets its old name written down first, so that
    /// what hangs on it stays on it.
    /// </summary>
    public EditOutcome Edit(params IReadOnlyList<Edit> edits)
    {
        var outcome = Editor.Apply(Tree, edits);
        if (outcome is not EditOutcome.Edited made)
        {
            return outcome;
        }

        var kept = KeptNames.For(_places.Wires, Read(made.Text)._places.Wires, edits);
        return kept.IsEmpty ? made : Editor.Apply(Tree, [.. edits, .. kept]);
    }

    /// <summary>Reads a design file. Never throws; either <see cref="Loom"/> is there or at least one finding stops.</summary>
    public static DesignFile Read(SourceText text)
    {
        var found = new Found();
        var root = Tree.Read(text, found);
        found.WritingIsRead();
        var tree = new Tree(text, root, found.InFileOrder());
        var places = new Places(root);
        var loom = DesignReader.Read(root, found, places);
        return new DesignFile(tree, loom, found.InFileOrder(), places);
    }
}
