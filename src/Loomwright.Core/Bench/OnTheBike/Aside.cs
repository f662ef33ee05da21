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
        Cables = StarterLeads.Of(paths);
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
    public bool Has(Line line) => Parts.Any(line.IsOf);
}
