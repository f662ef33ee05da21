using System.Collections.Immutable;

namespace Loomwright.Bench;

/// <summary>How power is taken away at once where something gets hot.</summary>
public static class WayOff
{
    /// <summary>
    /// What of a stage's own power-down takes power away, in order. On the bench the supply goes first: its output, or the clip,
    /// takes power from everything; then a starter's lead, which may be what is hot; then the key. On the bike the engine and the
    /// key come first: no battery comes off while the engine runs.
    /// </summary>
    public static ImmutableArray<string> Of(Stage stage)
    {
        var steps = stage.Steps.Where(s => s is { Act: Act.PowerDown, PowerOn: true });
        return [.. (stage.Site is null ? steps : steps.OrderBy(s => s.Do is not null ? 2 : s.Wire is not null ? 1 : 0)).Select(s => s.Text)];
    }
}
