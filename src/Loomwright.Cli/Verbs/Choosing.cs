using Loomwright.Text;

namespace Loomwright.Verbs;

/// <summary>What to say when a name was typed that there is not.</summary>
internal static class Choosing
{
    /// <summary><c>There is no verb chek. Did you mean check? The verbs are: …</c></summary>
    public static string None(string what, string typed, IReadOnlyCollection<string> names) =>
        string.IsNullOrWhiteSpace(typed)
            ? $"No {what} is named. {Instead($"{what}s", typed, names)}"
            : $"There is no {what} {typed.Trim()}. {Instead($"{what}s", typed, names)}";

    /// <summary>The nearest name and the list.</summary>
    public static string Instead(string whats, string typed, IReadOnlyCollection<string> names)
    {
        var meant = Nearest.To(typed, names) is { } near ? $"Did you mean {near}? " : "";
        return names.Count == 0 ? $"There are no {whats} here." : $"{meant}The {whats} are: {string.Join(", ", names)}.";
    }
}
