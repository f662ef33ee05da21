using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.Expressions;

/// <summary>The names that may stand in a condition, longest first.</summary>
/// <param name="mayBeWords">True where no word of the language can stand, as after <c>is</c>: a position may be called <c>pressed</c>.</param>
internal sealed class Vocabulary(IReadOnlyCollection<string> names, bool mayBeWords = false)
{
    /// <summary>The words that end a run of words which is no declared name.</summary>
    public static readonly string[] Joining = ["and", "or", "not", "is", "at most", "at", "delayed", "until"];

    private static readonly string[] Reserved = [.. Joining, "always", "latching", "pressed", "blinking"];

    private readonly ImmutableArray<(string Folded, string Name)> _longest =
    [
        .. names.Select(n => (Folded: Names.Fold(n), Name: n))
            .Where(n => n.Folded.Length > 0 && (mayBeWords || !Reserved.Contains(n.Folded)))
            .OrderByDescending(n => n.Folded.Length)
            .ThenBy(n => n.Folded, StringComparer.Ordinal),
    ];

    public bool IsEmpty => names.Count == 0;

    /// <summary>The names, as the end of a sentence; empty when there are none.</summary>
    public string Declared => IsEmpty ? "" : $"; declared are {string.Join(", ", names)}";

    public bool IsAt(Scanner text) => _longest.Any(n => text.Sees(n.Folded));

    /// <summary>Steps over the longest name that stands here and gives its declared spelling; null when none does.</summary>
    public string? Take(Scanner text)
    {
        foreach (var (folded, name) in _longest)
        {
            if (text.Take(folded))
            {
                return name;
            }
        }

        return null;
    }

    /// <summary>What to write in place of words that are no name here.</summary>
    public string Suggestion(string written, string those) =>
        Nearest.To(written, names) is { } near ? $"did you mean {near}?"
        : IsEmpty ? "declare it first"
        : $"{those} {string.Join(", ", names)}";
}
