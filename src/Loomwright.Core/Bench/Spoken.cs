namespace Loomwright.Bench;

/// <summary>The names of frames as a person says them.</summary>
internal static class Spoken
{
    /// <summary><c>rear cluster.stop</c> as <c>rear cluster stop</c>: the owner's names hold no dot of their own.</summary>
    public static string Of(string seen) => seen.Replace('.', ' ');

    /// <summary>A thing already introduced: <c>a lead</c> as <c>the lead</c>.</summary>
    public static string Known(string thing) =>
        thing.StartsWith("a ", StringComparison.OrdinalIgnoreCase) ? $"the {thing[2..]}"
        : thing.StartsWith("an ", StringComparison.OrdinalIgnoreCase) ? $"the {thing[3..]}"
        : thing;
}
