using System.Collections.Immutable;

namespace Loomwright.Design;

/// <summary>Where the boxes of the picture stand, in pixels of the overview at 100 %. It changes nothing of what the bike does.</summary>
public sealed record Placing
{
    /// <summary>No box has a place of its own.</summary>
    public static Placing None { get; } = new();

    /// <summary>Set when the whole sheet was arranged; null when it is arranged anew each time.</summary>
    public Arranged? Arranged { get; init; }

    /// <summary>In the order of the file; a box moved later stands later.</summary>
    public ImmutableArray<Placed> Boxes { get; init; } = [];
}

/// <summary>What was there when the sheet was arranged.</summary>
/// <param name="Wires">So many wires, the first of the file.</param>
/// <param name="Boxes">So many boxes, the first of <see cref="Placing.Boxes"/>.</param>
/// <param name="SpineTop">Where the band of lanes begins.</param>
/// <param name="SpineFoot">Where it ends.</param>
public sealed record Arranged(int Wires, int Boxes, int SpineTop, int SpineFoot);

/// <summary>The middle of the upper edge of one box.</summary>
public sealed record Placed(string Part, int X, int Y)
{
    /// <summary>Where it was arranged, when it was moved since; null when it was not.</summary>
    public (int X, int Y)? From { get; init; }
}
