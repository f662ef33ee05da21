using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>The unfused lead to each starter: last on, booted, first off.</summary>
internal static class StarterLeads
{
    /// <summary>Each with the end that is taken off: the nearest to the battery that feeds nothing else.</summary>
    public static ImmutableArray<(Wire Wire, TerminalRef End)> Of(Paths paths) =>
        [.. paths.Loom.Parts.Where(Risky.IsStarter).Select(s => Lead(paths, s)).OfType<(Wire, TerminalRef)>().DistinctBy(c => c.Item1)];

    private static (Wire, TerminalRef)? Lead(Paths paths, Part starter)
    {
        var way = paths.Way(paths.Feed, t => Names.Same(t.Part, starter.Name), t => t.IsFixed || t.Via is Via.Contact or Via.Relay) ?? [];
        var at = paths.Feed;
        foreach (var tie in way)
        {
            if (tie.Wire is { } wire && FeedsNothingElse(paths, wire, starter))
            {
                return (wire, at);
            }

            at = tie.Other(at);
        }

        return null;
    }

    private static bool FeedsNothingElse(Paths paths, Wire wire, Part starter)
    {
        var lost = paths.Joined(paths.Feed, t => t.IsFixed);
        lost.ExceptWith(paths.Joined(paths.Feed, t => t.IsFixed && t.Wire != wire));
        return lost.SelectMany(paths.At).All(t => t.Part == starter || t.Via is Via.Wire or Via.Joint or Via.Relay);
    }
}
