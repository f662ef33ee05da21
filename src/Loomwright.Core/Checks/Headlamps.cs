using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>Which filaments are a headlamp's, told by the category printed on the bulb.</summary>
internal static class Headlamps
{
    public static bool IsMain(Loom loom, SightPlace sight) => Category(loom, sight)?.EndsWith(" main", StringComparison.OrdinalIgnoreCase) == true;

    public static bool IsDipped(Loom loom, SightPlace sight) => Category(loom, sight)?.EndsWith(" dipped", StringComparison.OrdinalIgnoreCase) == true;

    /// <summary>The category printed on it, or null when the file names none.</summary>
    public static string? Category(Loom loom, SightPlace sight) => loom.Part(sight.Part) is { } part
        ? part.Settings.Group("elements").Group(sight.Sight.Name).Word("category") ?? part.Settings.Word("category")
        : null;
}
