using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.Web.Unmarked;

/// <summary>What the person calls the leads and the positions. Each beginning is one of its own.</summary>
public sealed class NamedThings(ImmutableArray<string> leads, ImmutableArray<string> positions)
{
    public ImmutableArray<string> Leads { get; } = leads;

    public ImmutableArray<string> Positions { get; } = positions;

    /// <summary>Names with a comma between.</summary>
    public static ImmutableArray<string> Listed(string names) => [.. names.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];

    /// <summary>Why these names cannot be used, or null.</summary>
    public static string? Wrong(string what, ImmutableArray<string> names, int most) =>
        names.Length < 2 || names.Length > most ? FormattableString.Invariant($"Name 2 to {most} {what}, a comma between them.")
        : names.Distinct(Names.Comparer).Count() < names.Length ? $"Two {what} have the same name. Give each its own: two brown leads are brown 1 and brown 2."
        : null;
}
