using System.Collections.Immutable;
using Loomwright.Quantities;

namespace Loomwright.Sizing;

/// <summary>What a shop has.</summary>
internal static class Sold
{
    /// <summary>Wire by the reel, thin to thick (common practice, no source).</summary>
    public static ImmutableArray<CrossSection> Wires { get; } = [.. new[] { 0.35, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50 }.Select(mm => new CrossSection(mm))];

    /// <summary>Blade fuses, smallest first: rating in amps and body colour of ISO 8820-3.</summary>
    public static ImmutableArray<(double Amps, string Colour)> Blades { get; } =
    [
        (1, "black"), (2, "grey"), (3, "violet"), (4, "pink"), (5, "tan"), (7.5, "brown"), (10, "red"),
        (15, "blue"), (20, "yellow"), (25, "clear"), (30, "green"), (35, "blue-green"), (40, "orange"),
    ];
}
