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
    public static bool Same(string a, string b) => string.Equals(Fold(a), Fold(b), StringComparison.Ordinal);

    /// <summary>Compares names by <see cref="Fold"/>; for dictionaries keyed by the owner's names.</summary>
    public static IEqualityComparer<string> Comparer { get; } = new FoldComparer();

    private sealed class FoldComparer : IEqualityComparer<string>
    {
        public bool Equals(string? x, string? y) => x is null ? y is null : y is not null && Same(x, y);

        public int GetHashCode(string obj) => string.GetHashCode(Fold(obj), StringComparison.Ordinal);
    }
}
