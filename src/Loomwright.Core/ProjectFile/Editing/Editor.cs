using System.Collections.Immutable;
using System.Text;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>
/// Makes edits by replacing stretches of the owner's text; comments, order, blank lines and line ends stay. What it wrote is
/// read back and compared with the tree meant before anything is given out.
/// </summary>
internal static class Editor
{
    /// <summary>Makes all edits or none. Paths are of the tree before; at most one edit may add to or take from any one list.</summary>
    public static EditOutcome Apply(Tree tree, params IReadOnlyList<Edit> edits)
    {
        if (!DesignReader.VersionIsOurs(tree.Root, new Found()))
        {
            return new EditOutcome.Refused("the file is of a version this program does not write", "open it with the program that wrote it");
        }

        if (edits.Any(e => e is Edit.Replace or Edit.Remove && e.At == NodePath.Root) || Changed.By(tree.Root, edits) is not { } meant)
        {
            return new EditOutcome.Refused("what should be changed is not in the file as it now is", "read the file again");
        }

        return Made(tree, meant, new BlockEdits(tree).Replacements(edits)) is { } made
            ? made
            : new EditOutcome.Refused("this cannot be changed without touching more than it", "change it by hand; the place is written in an unusual way");
    }

    private static EditOutcome.Edited? Made(Tree tree, Node meant, ImmutableArray<Replacement>? replacements)
    {
        if (replacements is null || Applied(tree.Text.Content, replacements.Value) is not { } content)
        {
            return null;
        }

        var text = new SourceText(tree.Text.Name, content);
        return Tree.Read(text).Root.SaysTheSame(meant) ? new EditOutcome.Edited(text, replacements.Value) : null;
    }

    private static string? Applied(string content, ImmutableArray<Replacement> replacements)
    {
        var made = new StringBuilder();
        var at = 0;
        foreach (var (span, text) in replacements)
        {
            if (span.Start < at)
            {
                return null;
            }

            made.Append(content, at, span.Start - at).Append(text);
            at = span.End;
        }

        return made.Append(content, at, content.Length - at).ToString();
    }
}
