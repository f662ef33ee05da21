using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>
/// Brings edits made while looking at an older text to the text as it now is. Keys are followed by name, items of a list by
/// the character they began at, so that what others added or took away before them does not lead to a neighbour.
/// </summary>
internal static class Carrying
{
    /// <summary>The same edits for <paramref name="now"/>, or null when what they touch was changed or is gone.</summary>
    /// <param name="seen">What was looked at when they were made.</param>
    /// <param name="since">Every change from there to now, each on the text the one before it gave.</param>
    public static ImmutableArray<Edit>? Carry(Node seen, Node now, IReadOnlyList<ImmutableArray<Replacement>> since, IReadOnlyList<Edit> edits)
    {
        var carried = ImmutableArray.CreateBuilder<Edit>(edits.Count);
        foreach (var edit in edits)
        {
            if (At(seen, now, since, edit.At) is not { } path
                || (edit is Edit.Replace or Edit.Remove && !Changed.Find(seen, edit.At)!.SaysTheSame(Changed.Find(now, path)!)))
            {
                return null;
            }

            carried.Add(edit with { At = path });
        }

        return carried.MoveToImmutable();
    }

    /// <summary>Where a character stands after the changes, or null when it was replaced.</summary>
    public static int? Carry(int offset, IReadOnlyList<ImmutableArray<Replacement>> since)
    {
        foreach (var change in since)
        {
            var moved = offset;
            foreach (var (span, text) in change)
            {
                if (span.End <= offset)
                {
                    moved += text.Length - span.Length;
                }
                else if (span.Start <= offset)
                {
                    return null;
                }
            }

            offset = moved;
        }

        return offset;
    }

    private static NodePath? At(Node seen, Node now, IReadOnlyList<ImmutableArray<Replacement>> since, NodePath path)
    {
        var carried = NodePath.Root;
        foreach (var step in path.Steps)
        {
            switch (seen, now)
            {
                case (Node.Map before, Node.Map after) when step.Name is { } name && before.Find(name) is { } was && after.Find(name) is { } entry:
                    (seen, now, carried) = (was.Value, entry.Value, carried.Key(name));
                    break;
                case (Node.List before, Node.List after) when step.Index >= 0 && step.Index < before.Items.Length
                    && Carry(before.Items[step.Index].Span.Start, since) is { } start && Place(after, start) is { } place:
                    (seen, now, carried) = (before.Items[step.Index], after.Items[place], carried.Item(place));
                    break;
                default:
                    return null;
            }
        }

        return carried;
    }

    private static int? Place(Node.List list, int start)
    {
        var place = list.Items.IndexOf(list.Items.FirstOrDefault(i => i.Span.Start == start)!);
        return place < 0 ? null : place;
    }
}
