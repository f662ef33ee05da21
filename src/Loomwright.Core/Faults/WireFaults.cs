using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Faults;

/// <summary>What goes wrong with single wires.</summary>
internal sealed class WireFaults(CatalogueSite site)
{
    /// <summary>A corroded joint as repair stories tell it, seen under a headlamp or a horn, and a bad one, seen under a tail lamp (judgement).</summary>
    public static readonly ImmutableArray<double> BadJointOhms = [0.5, 5];

    // Lamps stand this, a starter behind it does not turn any more (judgement).
    private const double StarvesAStarterOhms = 0.2;

    private const int Ends = 2;

    // From here on a lead may carry a starter, and has rings that fit its posts (judgement).
    private const double ThickMm2 = 10;

    /// <summary>Each wire open, then each wire end on the terminal beside it, then each thick strap from ground to ground on a post of the starter relay.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> Leads() =>
    [
        .. site.Loom.Wires.Select(w => ((Fault)new Fault.Open(w.Name), OpenBy(w))),
        .. site.Loom.Wires.SelectMany(Moves),
        .. site.Loom.Wires.Where(w => w.Size.SquareMillimetres >= ThickMm2 && site.IsGround(w.From.Part) && site.IsGround(w.To.Part)).SelectMany(OnPosts),
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

    /// <summary>The ends of spare leads against each other and against ground.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> LooseEnds()
    {
        var ends = site.LooseEnds.ToList();
        var others = Ground() is { } ground ? ends.Append(ground).ToList() : ends;
        return from i in Enumerable.Range(0, ends.Count)
               from other in others.Skip(i + 1)
               where !site.Joined.Joins(ends[i], other)
               select ((Fault)new Fault.Shorted(ends[i], other), (ImmutableArray<Cause>)[new Cause("spare end bare", 1.0 / (others.Count - 1))]);
    }

    /// <summary>A bad joint in each wire.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> High() =>
        from wire in site.Loom.Wires
        let all = wire.Size.SquareMillimetres >= ThickMm2 ? BadJointOhms.Insert(0, StarvesAStarterOhms) : BadJointOhms
        from ohms in all
        select ((Fault)new Fault.High(wire.Name, ohms), (ImmutableArray<Cause>)[new Cause("high crimp", (double)Ends / all.Length)]);

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

    private IEnumerable<(Fault, ImmutableArray<Cause>)> OnPosts(Wire strap)
    {
        var posts = site.StarterPosts.ToList();
        return from end in new[] { strap.From, strap.To }
               from post in posts
               select ((Fault)new Fault.Moved(strap.Name, end, post), (ImmutableArray<Cause>)[new Cause("neighbouring terminal", 1.0 / posts.Count)]);
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
