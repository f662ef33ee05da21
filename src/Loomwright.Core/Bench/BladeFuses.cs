using Loomwright.Quantities;
using Loomwright.Sizing;

namespace Loomwright.Bench;

/// <summary>Which blade fuse goes in at first power.</summary>
internal static class BladeFuses
{
    /// <summary>First power: the fuse stands this many times what the stage draws (common practice: a fuse carries 0.7 to 0.8 of its rating for long).</summary>
    public const double Margin = 1.25;

    /// <summary>
    /// The smallest rating at or above <see cref="Margin"/> × the current; the largest when none is. Never above the final
    /// fuse: then the final one itself, even where it is too small.
    /// </summary>
    public static FirstFuse For(Current draws, Current? final)
    {
        var wanted = draws.Amps * Margin;
        var chosen = Sold.Blades.FirstOrDefault(r => r.Amps >= wanted, Sold.Blades[^1]).Amps;
        var rating = final is { } f ? Math.Min(chosen, f.Amps) : chosen;
        return new FirstFuse(new Current(rating), Colour(rating), final);
    }

    /// <summary>The body colour of a rating; empty when it is no standard one.</summary>
    public static string Colour(double amps) => Sold.Blades.FirstOrDefault(r => r.Amps == amps, (Amps: amps, Colour: "")).Colour;
}
