using System.Collections.Immutable;
using Loomwright.Quantities;

namespace Loomwright.Bench;

/// <summary>The blade fuses a shop sells: ratings and body colours of ISO 8820-3.</summary>
internal static class BladeFuses
{
    /// <summary>First power: the fuse stands this many times what the stage draws (common practice: a fuse carries 0.7 to 0.8 of its rating for long).</summary>
    public const double Margin = 1.25;

    /// <summary>Smallest first: rating in amps and body colour.</summary>
    public static ImmutableArray<(double Amps, string Colour)> Ratings { get; } =
    [
        (1, "black"), (2, "grey"), (3, "violet"), (4, "pink"), (5, "tan"), (7.5, "brown"), (10, "red"),
        (15, "blue"), (20, "yellow"), (25, "clear"), (30, "green"), (35, "blue-green"), (40, "orange"),
    ];

    /// <summary>
    /// The smallest rating at or above <see cref="Margin"/> × the current; the largest when none is. Never above the final
    /// fuse: then the final one itself, even where it is too small.
    /// </summary>
    public static FirstFuse For(Current draws, Current? final)
    {
        var wanted = draws.Amps * Margin;
        var chosen = Ratings.FirstOrDefault(r => r.Amps >= wanted, Ratings[^1]).Amps;
        var rating = final is { } f ? Math.Min(chosen, f.Amps) : chosen;
        return new FirstFuse(new Current(rating), Colour(rating), final);
    }

    /// <summary>The body colour of a rating; empty when it is no standard one.</summary>
    public static string Colour(double amps) => Ratings.FirstOrDefault(r => r.Amps == amps, (Amps: amps, Colour: "")).Colour;
}
