using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>What to write instead of a word that is not known.</summary>
internal static class Suggestion
{
    private const int MostShown = 24;

    /// <summary>The nearest known word as a question, else the known words.</summary>
    public static string For(string written, IReadOnlyCollection<string> known) =>
        written.Length <= 80 && Nearest.To(written, known.Where(k => k.Length <= 80)) is { } near
            ? $"did you mean “{near}”?"
            : known.Count == 0 ? "none is known here." : "known here: " + string.Join(", ", known.Take(MostShown)) + (known.Count > MostShown ? ", …" : ".");
}
