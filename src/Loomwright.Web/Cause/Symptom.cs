using System.Collections.Immutable;

namespace Loomwright.Web.Cause;

/// <summary>What a person notices first.</summary>
/// <param name="Words">On its button.</param>
/// <param name="AllDark">Nothing shows, so that the form begins with everything dark and silent.</param>
/// <param name="Blown">A fuse blew, so that its caution is shown.</param>
public sealed record Symptom(string Words, bool AllDark = false, bool Blown = false)
{
    /// <summary>The six, as they stand on the page.</summary>
    public static ImmutableArray<Symptom> All { get; } =
    [
        new("Nothing at all", AllDark: true), new("One lamp stays dark"), new("The wrong lamp lights"), new("It is dim"), new("It blinks wrongly"), new("A fuse blew", Blown: true),
    ];
}
