using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Faults;

/// <summary>What wires alone join, whatever the parts between them do.</summary>
internal sealed class Nets
{
    // More than any contact of a plug has, less than any load.
    private const double MostOfAJoint = 0.05;

    private readonly Wiring _wiring;
    private readonly int[] _net;

    private Nets(Wiring wiring, Func<Link, bool> counts)
    {
        _wiring = wiring;
        _net = [.. Enumerable.Range(0, wiring.NodeCount)];
        foreach (var link in wiring.Links.Where(counts))
        {
            var (from, to) = (Root(link.From), Root(link.To));
            _net[Math.Max(from, to)] = Math.Min(from, to);
        }
    }

    /// <summary>The nets of all wires.</summary>
    public static Nets Of(Wiring wiring) => new(wiring, static l => l.IsWire);

    /// <summary>The nets of all wires and of what always joins: plugs that are together, metal on metal.</summary>
    public static Nets Joined(Wiring wiring) => new(wiring, static l => Joins(l) || l.IsJoint);

    /// <summary>The nets that are left when one wire is taken out.</summary>
    public static Nets Without(Wiring wiring, string wire) => new(wiring, l => l.IsWire && !Names.Same(l.Owner, wire));

    /// <summary>The nets that are left when nothing sits on one node.</summary>
    public static Nets Around(Wiring wiring, int node) => new(wiring, l => Joins(l) && l.From != node && l.To != node);

    /// <summary>Whether wires alone join the two.</summary>
    public bool Joins(TerminalRef a, TerminalRef b) =>
        _wiring.NodeOf(a) is { } one && _wiring.NodeOf(b) is { } other && Joins(one, other);

    /// <summary>Whether wires alone join the two nodes.</summary>
    public bool Joins(int a, int b) => Root(a) == Root(b);

    private static bool Joins(Link link) => link.IsWire || link is { IsJoint: false, Switching: null, Fuse: null, Curve: Ohms { ResistanceOhms: < MostOfAJoint } };

    private int Root(int node)
    {
        while (_net[node] != node)
        {
            node = _net[node] = _net[_net[node]];
        }

        return node;
    }
}

/// <summary>A stud's own leads: those of its wires whose other end wires and plugs join to the reference without passing the stud.</summary>
internal static class GroundLeads
{
    /// <summary>Their names in file order; empty when the part is not a point with such a lead.</summary>
    public static ImmutableArray<string> Of(Wiring wiring, string ground)
    {
        if (wiring.NodeOf(new TerminalRef(ground, "")) is not { } stud)
        {
            return [];
        }

        var around = Nets.Around(wiring, stud);
        return [.. wiring.Links
            .Where(l => l.IsWire && (l.From == stud ? around.Joins(l.To, 0) : l.To == stud && around.Joins(l.From, 0)))
            .Select(l => l.Owner)];
    }
}
