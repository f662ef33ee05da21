using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Bench.OnTheBike;

/// <summary>What stays off and capped until its own stage: the starter's cable, pumps and coils.</summary>
internal sealed class Aside
{
    public Aside(Loom loom, Paths paths)
    {
        Cables = [.. loom.Parts.Where(Risky.IsStarter).Select(s => Cable(paths, s)).OfType<(Wire, TerminalRef)>().DistinctBy(c => c.Item1)];
        WithoutStarter = loom with { Wires = loom.Wires.RemoveAll(w => Cables.Any(c => c.Wire == w)) };
        Parts = [.. loom.Parts.Where(p => Risky.IsPump(p) || Risky.IsCoil(p)).Select(p => p.Name)];
        Quiet = Unplugged.Of(WithoutStarter, paths, Parts);
    }

    /// <summary>The lead to each starter, with the end that is taken off: the nearest to the battery that feeds nothing else.</summary>
    public ImmutableArray<(Wire Wire, TerminalRef End)> Cables { get; }

    /// <summary>Pumps and coils, in file order.</summary>
    public ImmutableArray<string> Parts { get; }

    /// <summary>The bike with the starters' leads off.</summary>
    public Loom WithoutStarter { get; }

    /// <summary>The bike with pumps and coils unplugged too.</summary>
    public Loom Quiet { get; }

    /// <summary>Whether a line brings on a pump or a coil.</summary>
    public bool Has(Line line) => line.Loads.Any(l => Parts.Any(p => Names.Same(l, p) || l.StartsWith(p + ".", StringComparison.OrdinalIgnoreCase)));

    private static (Wire, TerminalRef)? Cable(Paths paths, Part starter)
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
