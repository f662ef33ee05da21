using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Faults;

/// <summary>What goes wrong with single wires.</summary>
internal sealed class WireFaults(CatalogueSite site)
{
    /// <summary>A corroded joint as repair stories tell it, seen under a headlamp or a horn, and a bad one, seen under a tail lamp (judgement).</summary>
    public static readonly ImmutableArray<double> BadJointOhms = [0.5, 5];

    private const int Ends = 2;

    /// <summary>Each wire open, then each wire end on the terminal beside it.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> Leads() =>
    [
        .. site.Loom.Wires.Select(w => ((Fault)new Fault.Open(w.Name), OpenBy(w))),
        .. site.Loom.Wires.SelectMany(Moves),
    ];

    /// <summary>Each wire against ground and against the feed of the bike.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> Chafed()
    {
        var ground = Ground();
        var feed = Feed();
        return
        [
            .. site.Loom.Wires.SelectMany(w => Touches(w, ground, "short to ground")),
            .. site.Loom.Wires.SelectMany(w => Touches(w, feed, "short to supply")),
        ];
    }

    /// <summary>A bad joint in each wire.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> High() =>
        from wire in site.Loom.Wires
        from ohms in BadJointOhms
        select ((Fault)new Fault.High(wire.Name, ohms), (ImmutableArray<Cause>)[new Cause("high crimp", (double)Ends / BadJointOhms.Length)]);

    private ImmutableArray<Cause> OpenBy(Wire wire)
    {
        ImmutableArray<Cause> any = [new("left out"), new("open crimp", Ends), new("insulation clamped")];
        return FeedsOrGrounds(wire.From) || FeedsOrGrounds(wire.To) ? any.Add(new("feed or ground left out")) : any;
    }

    private bool FeedsOrGrounds(TerminalRef end) =>
        site.Wiring.Parts.FirstOrDefault(p => new TerminalRef(p.Name, "") == new TerminalRef(end.Part, "")) is { } part
        && (part.Model.Supply is not null || !part.Model.Protectors.IsEmpty || site.IsGround(part.Name));

    private IEnumerable<(Fault, ImmutableArray<Cause>)> Moves(Wire wire)
    {
        var left = Nets.Without(site.Wiring, wire.Name);
        return from end in new[] { wire.From, wire.To }
               let beside = site.Neighbours.Where(p => p.A == end || p.B == end).Select(p => p.A == end ? p.B : p.A).ToList()
               from to in beside
               where !left.Joins(end, to)
               select ((Fault)new Fault.Moved(wire.Name, end, to), (ImmutableArray<Cause>)[new Cause("neighbouring terminal", 1.0 / beside.Count)]);
    }

    private IEnumerable<(Fault, ImmutableArray<Cause>)> Touches(Wire wire, TerminalRef? other, string kind)
    {
        if (other is { } to && !site.Joined.Joins(wire.From, to))
        {
            yield return (new Fault.Shorted(wire.From, to), [new Cause(kind)]);
        }
    }

    // Metal near the loom where there is some, else the minus terminal.
    private TerminalRef? Ground() =>
        site.Wiring.Parts.Where(p => site.IsGround(p.Name)).Select(p => new TerminalRef(p.Name, ""))
            .Where(t => site.Wiring.NodeOf(t) is { } node && site.Joined.Joins(node, 0))
            .OrderByDescending(t => Text.Names.Same(site.Loom.Part(t.Part)!.Kind, "ground body"))
            .Select(t => (TerminalRef?)t).FirstOrDefault() ?? site.PointAt(0);

    // What most of the loom lies beside: the feed of the first box, else what is behind the first fuse, else plus itself.
    private TerminalRef? Feed() =>
        site.Wiring.Boxes.Select(b => site.PointAt(b.SupplyNode))
            .Concat(site.Wiring.Fuses.Select(f => site.PointAt(site.Wiring.Links[f.Link].To)))
            .Concat(site.Wiring.Supplies.Select(s => site.PointAt(site.Wiring.Links[s].From)))
            .FirstOrDefault(t => t is not null);
}
