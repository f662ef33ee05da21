using System.Text;

namespace Loomwright.Text;

/// <summary>How the owner's names are matched: case folded, blanks collapsed, Unicode composed; the spelling shown stays the owner's.</summary>
public static class Names
{
    /// <summary>The form two names are compared in.</summary>
    public static string Fold(string name)
    {
        var folded = new StringBuilder(name.Length);
        var blank = false;
        foreach (var c in Accents.Compose(name).Trim())
        {
            if (char.IsWhiteSpace(c))
            {
                blank = true;
                continue;
            }

            if (blank)
            {
                folded.Append(' ');
                blank = false;
            }

            folded.Append(char.ToLowerInvariant(c));
        }

        return folded.ToString();
    }

    /// <summary>Whether two names are the same name to their owner.</summary>
    public static bool Same(string a, string b) => string.Equals(a, b, StringComparison.Ordinal)
        || (HasAccents(a) || HasAccents(b) ? string.Equals(Fold(a), Fold(b), StringComparison.Ordinal) : SameLetters(a.AsSpan().Trim(), b.AsSpan().Trim()));

    /// <summary>Compares names by <see cref="Fold"/>; for dictionaries keyed by the owner's names.</summary>
    public static IEqualityComparer<string> Comparer { get; } = new FoldComparer();

    // Below this no character joins the one before it, and names are compared where they lie: a page asks thousands of times for a click.
    private static bool HasAccents(string name) => name.AsSpan().ContainsAnyExceptInRange('\0', '\u02ff');

    private static bool SameLetters(ReadOnlySpan<char> a, ReadOnlySpan<char> b)
    {
        var (i, j) = (0, 0);
        while (i < a.Length && j < b.Length)
        {
            if (Next(a, ref i) != Next(b, ref j))
            {
                return false;
            }
        }

        return i == a.Length && j == b.Length;
    }

    private static char Next(ReadOnlySpan<char> name, ref int at)
    {
        if (!char.IsWhiteSpace(name[at]))
        {
            return char.ToLowerInvariant(name[at++]);
        }

        while (char.IsWhiteSpace(name[at]))
        {
            at++;
        }

        return ' ';
    }

    private sealed class FoldComparer : IEqualityComparer<string>
    {
        public bool Equals(string? x, string? y) => x is null ? y is null : y is not null && Same(x, y);

        public int GetHashCode(string obj) => string.GetHashCode(Fold(obj), StringComparison.Ordinal);
    }
}
