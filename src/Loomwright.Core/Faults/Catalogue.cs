using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Faults;

/// <summary>Every single fault worth trying on a loom, in an order that depends on the file alone.</summary>
public static class Catalogue
{
    // A corroded joint and a dirty switch as told in repair stories: enough to be seen under load (judgement).
    private const double BadJointOhms = 0.5;
    private const double LeakOhms = 30;

    /// <summary>
    /// Each wire open; each wire end on a neighbouring terminal of the same plug; neighbours swapped; each ground lost;
    /// each load and relay dead; each part with a plus and a minus reversed; neighbours touching; a bad joint in each wire
    /// and each mount; each switch and relay stuck in each position; each open contact leaking. A move, swap or touch between points
    /// that wires already join is no fault. Wrong settings are not listed: there is no end of them.
    /// </summary>
    public static ImmutableArray<Fault> Of(Loom loom)
    {
        var wiring = Wiring.Of(loom);
        var all = Nets.Of(wiring);
        var pairs = wiring.Parts.SelectMany(Neighbours).ToImmutableArray();
        var wired = loom.Wires.SelectMany(w => new[] { w.From, w.To }).ToHashSet();
        return
        [
            .. loom.Wires.Select(w => new Fault.Open(w.Name)),
            .. loom.Wires.SelectMany(w => Moves(wiring, w, pairs)),
            .. pairs.Where(p => wired.Contains(p.A) && wired.Contains(p.B) && !all.Joins(p.A, p.B)).Select(p => new Fault.Swapped(p.A, p.B)),
            .. wiring.Parts.Where(p => !GroundLeads.Of(wiring, p.Name).IsEmpty && IsGround(loom, p)).Select(p => new Fault.Lost(p.Name)),
            .. wiring.Links.Where(l => l.IsJoint).Select(l => new Fault.Lost(l.Owner)).Where(f => GroundLeads.Of(wiring, f.Ground).IsEmpty),
            .. wiring.Parts.Where(p => !p.Model.Sights.IsEmpty || !p.Model.Relays.IsEmpty || !p.Model.Flashers.IsEmpty).Select(p => new Fault.Dead(p.Name)),
            .. wiring.Parts.Where(p => p.Model.Polarity is not null).Select(p => new Fault.Reversed(p.Name)),
            .. pairs.Where(p => (wired.Contains(p.A) || wired.Contains(p.B)) && !all.Joins(p.A, p.B)).Select(p => new Fault.Shorted(p.A, p.B)),
            .. loom.Wires.Select(w => new Fault.High(w.Name, BadJointOhms)),
            .. wiring.Links.Where(l => l.IsJoint).Select(l => new Fault.High(l.Owner, BadJointOhms)).Where(f => GroundLeads.Of(wiring, f.Joint).IsEmpty),
            .. loom.Parts.SelectMany(Moving.Of).SelectMany(m => m.Positions.Select(p => new Fault.Stuck(m.Name, p))),
            .. wiring.Parts.Where(p => p.Model.Elements.Any(Compiling.IsContact)).Select(p => new Fault.Leak(p.Name, LeakOhms)),
        ];
    }

    /// <summary>Pairs of terminals side by side on one plug, in the order on the case.</summary>
    private static IEnumerable<(TerminalRef A, TerminalRef B)> Neighbours(PartPlace part) =>
        from plug in part.Model.Terminals.GroupBy(t => t.Plug)
        from pair in plug.Zip(plug.Skip(1))
        select (new TerminalRef(part.Name, pair.First.Mark), new TerminalRef(part.Name, pair.Second.Mark));

    private static IEnumerable<Fault> Moves(Wiring wiring, Wire wire, ImmutableArray<(TerminalRef A, TerminalRef B)> pairs)
    {
        var left = Nets.Without(wiring, wire.Name);
        return from end in new[] { wire.From, wire.To }
               from pair in pairs
               where pair.A == end || pair.B == end
               let to = pair.A == end ? pair.B : pair.A
               where !left.Joins(end, to)
               select new Fault.Moved(wire.Name, end, to);
    }

    private static bool IsGround(Loom loom, PartPlace part) => loom.Part(part.Name)!.Kind is var kind && (Names.Same(kind, "ground stud") || Names.Same(kind, "ground body"));
}
