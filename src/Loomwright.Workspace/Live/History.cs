using System.Collections.Immutable;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Live;

/// <summary>The list of changes of one document since it was opened. It only grows; undo adds to it.</summary>
internal sealed class History
{
    public ImmutableArray<Change> Changes { get; private set; } = [];

    public void Add(Change change) => Changes = Changes.Add(change);

    /// <summary>The text of that hash with what was changed since, or null when it was never seen here.</summary>
    public (SourceText Seen, IReadOnlyList<ImmutableArray<Replacement>> Since)? Since(string sha256, Revision now)
    {
        if (sha256 == now.Sha256)
        {
            return (now.Text, []);
        }

        for (var at = Changes.Length - 1; at >= 0; at--)
        {
            if (Changes[at].Base == sha256)
            {
                return (Changes[at].Before, [.. Changes.Skip(at).Select(c => c.Replacements)]);
            }
        }

        return null;
    }

    /// <summary>Place in the list of what a person's next undo, or redo, takes back; null when there is nothing.</summary>
    public int? Next(ChangeKind kind, string who)
    {
        var (undo, redo) = (new Stack<int>(), new Stack<int>());
        for (var at = 0; at < Changes.Length; at++)
        {
            switch (Changes[at].Who == who ? Changes[at].Kind : ChangeKind.Outside)
            {
                case ChangeKind.Edit:
                    undo.Push(at);
                    redo.Clear();
                    break;
                case ChangeKind.Undo:
                    undo.Pop();
                    redo.Push(at);
                    break;
                case ChangeKind.Redo:
                    redo.Pop();
                    undo.Push(at);
                    break;
            }
        }

        return (kind == ChangeKind.Undo ? undo : redo).TryPeek(out var next) ? next : null;
    }
}
