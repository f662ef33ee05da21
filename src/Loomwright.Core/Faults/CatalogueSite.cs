using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Faults;

/// <summary>What all lists of one catalogue look at.</summary>
internal sealed class CatalogueSite
{
    private readonly PriorOptions _options;

    public CatalogueSite(Loom loom, PriorOptions options)
    {
        (Loom, _options) = (loom, options);
        Wiring = Wiring.Of(loom);
        Nets = Nets.Of(Wiring);
        Joined = Nets.Joined(Wiring);
        Neighbours = [.. Wiring.Parts.SelectMany(NeighboursOf)];
        Wired = [.. loom.Wires.SelectMany(w => new[] { w.From, w.To })];
    }

    public Loom Loom { get; }

    public Wiring Wiring { get; }

    /// <summary>What wires alone join.</summary>
    public Nets Nets { get; }

    /// <summary>What wires, plugs and metal join.</summary>
    public Nets Joined { get; }

    /// <summary>Pairs of terminals side by side in one plug, in the order on the case.</summary>
    public ImmutableArray<(TerminalRef A, TerminalRef B)> Neighbours { get; }

    /// <summary>Terminals that carry a wire.</summary>
    public HashSet<TerminalRef> Wired { get; }

    public PartPlace Part(string name) => Wiring.Parts.First(p => Names.Same(p.Name, name));

    /// <summary>The row a part's own faults take: <c>dead new</c> or <c>dead reused</c>.</summary>
    public string Own(string kind, string part) => _options.Reused.Contains(part, Names.Comparer) ? $"{kind} reused" : $"{kind} new";

    /// <summary>A point that stands for a node; null for a point inside a part.</summary>
    public TerminalRef? PointAt(int node) => Wiring.Points.Where(p => p.Node == node).Select(p => (TerminalRef?)p.Terminal).FirstOrDefault();

    /// <summary>Spare leads' ends: splices that one wire alone ends on.</summary>
    public IEnumerable<TerminalRef> LooseEnds =>
        from part in Loom.Parts
        where Names.Same(part.Kind, "splice") && Loom.Wires.Count(w => Names.Same(w.From.Part, part.Name) || Names.Same(w.To.Part, part.Name)) == 1
        select new TerminalRef(part.Name, "");

    /// <summary>The two thick posts of each starter relay and solenoid.</summary>
    public IEnumerable<TerminalRef> StarterPosts =>
        from part in Loom.Parts
        where part.Kind is "starter relay" or "solenoid"
        from contact in Part(part.Name).Model.Elements.Where(Compiling.IsContact)
        from mark in new[] { contact.From, contact.To }
        select new TerminalRef(part.Name, mark);

    /// <summary>Whether a part is a stud or a lump of metal that currents return through.</summary>
    public bool IsGround(string part) => Loom.Part(part)!.Kind is var kind && (Names.Same(kind, "ground stud") || Names.Same(kind, "ground body"));

    private static IEnumerable<(TerminalRef A, TerminalRef B)> NeighboursOf(PartPlace part) =>
        from plug in part.Model.Terminals.GroupBy(t => t.Plug)
        from pair in plug.Zip(plug.Skip(1))
        select (new TerminalRef(part.Name, pair.First.Mark), new TerminalRef(part.Name, pair.Second.Mark));
}
