using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Sizing;

/// <summary>
/// What guards each wire: of all ways from the supply to it, through contacts and outputs however they stand, the one whose
/// smallest guard is largest. More than that guard's rating can flow into a fault there for as long as it stands it.
/// </summary>
internal sealed class Guards
{
    // As in the drawing of paths: below this a resistance is a joint, not a load.
    private const double JointOhms = 0.2;

    private readonly Wiring _wiring;
    private readonly double[] _amps;
    private readonly Guard?[] _guard;
    private readonly int[] _cameBy;
    private readonly int _return = -1;
    private readonly Dictionary<int, List<int>> _at = [];

    public Guards(Loom loom)
    {
        _wiring = Wiring.Of(loom);
        _amps = new double[_wiring.NodeCount];
        _guard = new Guard?[_wiring.NodeCount];
        _cameBy = [.. Enumerable.Repeat(-1, _wiring.NodeCount)];
        var lights = _wiring.Sights.Select(s => s.Link).ToHashSet();
        var inBoxes = _wiring.Boxes.Select(b => b.Part).ToHashSet(StringComparer.Ordinal);
        for (var l = 0; l < _wiring.Links.Length; l++)
        {
            if (Carries(_wiring.Links[l]) && !lights.Contains(l) && !_wiring.Supplies.Contains(l))
            {
                At(_wiring.Links[l].From).Add(l);
                At(_wiring.Links[l].To).Add(l);
            }
        }

        var source = loom.Parts.Select(p => (Part: p, Kinds.Find(p.Kind)?.Build(p).Supply)).FirstOrDefault(p => p.Supply is not null);
        if (source.Supply is { } supply)
        {
            var (feed, back) = loom.Ground == GroundSide.Negative ? (supply.Plus, supply.Minus) : (supply.Minus, supply.Plus);
            _return = _wiring.NodeOf(new TerminalRef(source.Part.Name, back))!.Value;
            Walk(_wiring.NodeOf(new TerminalRef(source.Part.Name, feed))!.Value, Return(_return));
            MostAmps = Math.Abs(_wiring.Links[_wiring.Supplies[0]].Curve.At(0).Amps);
        }
    }

    /// <summary>What the supply gives into a dead short.</summary>
    public double MostAmps { get; }

    /// <summary>The guard of a wire by its place in the file; null when it has none or is fed by nothing.</summary>
    public Guard? Of(int wire)
    {
        var link = _wiring.Links[wire];
        return _amps[link.From] >= _amps[link.To] ? _guard[link.From] : _guard[link.To];
    }

    /// <summary>The largest fuse that a wire before all fuses feeds; null when it feeds none.</summary>
    public Guard? FedBy(int wire) => Enumerable.Range(0, _wiring.Fuses.Length)
        .Where(f => WayTo(_wiring.Links[_wiring.Fuses[f].Link].From).Concat(WayTo(_wiring.Links[_wiring.Fuses[f].Link].To)).Contains(wire))
        .Select(f => GuardOf(_wiring.Fuses[f]))
        .MaxBy(g => g.Rating.Amps);

    /// <summary>The largest fuse whose fault a lead on the supply's return terminal must bring back; null for every other wire.</summary>
    public Guard? BringsBack(int wire) => _wiring.Links[wire].From == _return || _wiring.Links[wire].To == _return
        ? Enumerable.Range(0, _wiring.Fuses.Length).Where(f => Before(f).IsEmpty).Select(f => GuardOf(_wiring.Fuses[f])).MaxBy(g => g.Rating.Amps)
        : null;

    /// <summary>The wires on a load's way there and on its way back, by their places in the file; both empty when it has no way back of its own.</summary>
    public (ImmutableArray<int> There, ImmutableArray<int> Back) Circuit(string load)
    {
        if (_wiring.Sights.FirstOrDefault(s => Text.Names.Same(s.Name, load)) is not { } sight)
        {
            return ([], []);
        }

        var link = _wiring.Links[sight.Link];
        var (feed, back) = _amps[link.From] >= _amps[link.To] ? (link.From, link.To) : (link.To, link.From);
        return WayBack(back) is { } home ? (Wires(WayTo(feed)), Wires(home)) : ([], []);

        ImmutableArray<int> Wires(IEnumerable<int> links) => [.. links.Where(l => _wiring.Links[l].IsWire)];
    }

    /// <summary>Whether a load hangs on an output that is only on for a share of the time: its volts are then not what the wiring leaves it.</summary>
    public bool IsDimmed(string load) => _wiring.Sights.Where(s => Text.Names.Same(s.Name, load)).Select(s => _wiring.Links[s.Link]).Any(link =>
        WayTo(link.From).Concat(WayTo(link.To)).Any(l => _wiring.Links[l].Switching is Switching.Output o
            && _wiring.Boxes[o.Box].Facts.Outputs[o.Place].When.ToString().Contains('%', StringComparison.Ordinal)));

    /// <summary>The fuses between the supply and each fuse, by their places, the nearest last.</summary>
    public ImmutableArray<int> Before(int fuse)
    {
        var link = _wiring.Links[_wiring.Fuses[fuse].Link];
        return [.. FusesTo(_cameBy[link.To] == _wiring.Fuses[fuse].Link ? link.From : link.To).Where(f => f != fuse)];
    }

    /// <summary>What every filament behind a fuse takes when all of them are switched on cold at once, at that voltage.</summary>
    public double ColdAmps(int fuse, double volts) => _wiring.Colds
        .Where(l => FusesTo(_amps[_wiring.Links[l].From] >= _amps[_wiring.Links[l].To] ? _wiring.Links[l].From : _wiring.Links[l].To).Contains(fuse))
        .Sum(l => Math.Abs(_wiring.Links[l].Cold!.At(volts).Amps));

    /// <summary>The fuses of the bike.</summary>
    public ImmutableArray<Guard> Fuses => [.. _wiring.Fuses.Select(GuardOf)];

    private static Guard GuardOf(FusePlace fuse) =>
        new(fuse.Button is null && fuse.Cycle is null ? GuardKind.Fuse : GuardKind.Breaker, fuse.Part, null, new Current(fuse.RatingAmps)) { Band = fuse.Band };

    private static bool Carries(Link link) =>
        link.IsWire || link.IsJoint || link.Fuse is not null || link.Switching is Switching.Output || link.Curve is Diode or Ohms { ResistanceOhms: <= JointOhms };

    private List<int> At(int node)
    {
        if (!_at.TryGetValue(node, out var links))
        {
            _at.Add(node, links = []);
        }

        return links;
    }

    private HashSet<int> Return(int start)
    {
        var reached = new HashSet<int> { start };
        var todo = new Queue<int>([start]);
        while (todo.TryDequeue(out var node))
        {
            foreach (var link in At(node).Select(l => _wiring.Links[l]).Where(l => l.Switching is null && l.Fuse is null && l.Curve is not Diode))
            {
                var other = link.From == node ? link.To : link.From;
                if (reached.Add(other))
                {
                    todo.Enqueue(other);
                }
            }
        }

        return reached;
    }

    // Widest first, so a node is settled when it is first taken.
    private void Walk(int start, HashSet<int> back)
    {
        var todo = new PriorityQueue<int, double>();
        _amps[start] = double.PositiveInfinity;
        todo.Enqueue(start, double.NegativeInfinity);
        while (todo.TryDequeue(out var node, out var minus))
        {
            if (-minus < _amps[node])
            {
                continue;
            }

            foreach (var l in At(node))
            {
                var link = _wiring.Links[l];
                var other = link.From == node ? link.To : link.From;
                var guard = Limit(link) is { } limit && limit.Rating.Amps < _amps[node] ? limit : _guard[node];
                var amps = Math.Min(_amps[node], guard?.Rating.Amps ?? double.PositiveInfinity);
                if (amps > _amps[other] && !back.Contains(other) && !(link.Curve is Diode && other == link.From))
                {
                    (_amps[other], _guard[other], _cameBy[other]) = (amps, guard, l);
                    todo.Enqueue(other, -amps);
                }
            }
        }
    }

    // Links from a node to the supply's return, the fewest; null when there are none.
    private List<int>? WayBack(int start)
    {
        var cameBy = new Dictionary<int, int> { [start] = -1 };
        var todo = new Queue<int>([start]);
        while (todo.TryDequeue(out var node))
        {
            if (node == _return)
            {
                return [.. Back(node)];
            }

            foreach (var l in At(node))
            {
                var other = _wiring.Links[l].From == node ? _wiring.Links[l].To : _wiring.Links[l].From;
                if (cameBy.TryAdd(other, l))
                {
                    todo.Enqueue(other);
                }
            }
        }

        return null;

        IEnumerable<int> Back(int node)
        {
            for (; cameBy[node] is >= 0 and var l; node = _wiring.Links[l].From == node ? _wiring.Links[l].To : _wiring.Links[l].From)
            {
                yield return l;
            }
        }
    }

    private Guard? Limit(Link link) => link.Fuse is { } fuse ? GuardOf(_wiring.Fuses[fuse])
        : link.Switching is Switching.Output { Box: var b, Place: var o } && _wiring.Boxes[b].Facts.Outputs[o] is { LimitAmps: { } amps } output
            ? new Guard(GuardKind.Output, _wiring.Boxes[b].Part, output.Terminal, new Current(amps))
            : null;

    private IEnumerable<int> FusesTo(int node) => WayTo(node).Select(l => _wiring.Links[l].Fuse).OfType<int>();

    // Links from the supply to a node, the nearest to it last.
    private List<int> WayTo(int node)
    {
        var way = new List<int>();
        while (_cameBy[node] is >= 0 and var l)
        {
            way.Add(l);
            node = _wiring.Links[l].From == node ? _wiring.Links[l].To : _wiring.Links[l].From;
        }

        way.Reverse();
        return way;
    }
}
