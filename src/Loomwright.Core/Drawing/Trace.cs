using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>Stations one after the other, and the wire between each two; null where metal sits on metal.</summary>
internal sealed record Trail(ImmutableArray<Station> Stations, ImmutableArray<Wire?> Wires);

/// <summary>Follows wires, fuses, contacts and outputs through a loom by the fewest steps. It says how a bike is joined, not what flows.</summary>
internal sealed class Trace
{
    private readonly Dictionary<string, (Part Part, Model Model)> _parts;
    private readonly ILookup<TerminalRef, Step> _steps;
    private readonly TerminalRef? _plus;
    private readonly TerminalRef? _minus;

    public Trace(Loom loom)
    {
        _parts = loom.Parts.ToDictionary(p => p.Name, p => (p, Kinds.Find(p.Kind)?.Build(p) ?? new Model { Terminals = [] }), Names.Comparer);
        var along = loom.Wires.SelectMany(w => Both(w.From, w.To, w, null));
        var through = _parts.Values.SelectMany(p => p.Model.Elements.Where(e => Passes(p.Model, e)).SelectMany(e => Both(new(p.Part.Name, e.From), new(p.Part.Name, e.To), null, e)));
        var sitting = _parts.Values.SelectMany(p => p.Model.Joints.Where(j => _parts.ContainsKey(j.Part)).SelectMany(j => Both(new(p.Part.Name, j.Terminal), new(j.Part, ""), null, null)));
        _steps = along.Concat(through).Concat(sitting).ToLookup(s => s.From, s => s.Step);
        if (_parts.Values.FirstOrDefault(p => p.Model.Supply is not null) is { Model.Supply: { } supply } source)
        {
            (_plus, _minus) = (new(source.Part.Name, supply.Plus), new(source.Part.Name, supply.Minus));
        }
    }

    public Model? Model(string part) => _parts.TryGetValue(part, out var known) ? known.Model : null;

    /// <summary>From the supply's plus through an element of a part to its minus; null when there is no such way.</summary>
    public Trail? Through(Part part, Element element)
    {
        var (from, to) = (new TerminalRef(part.Name, element.From), new TerminalRef(part.Name, element.To));
        return _plus is not { } plus || _minus is not { } minus ? null : Whole(from, to) ?? Whole(to, from);

        Trail? Whole(TerminalRef near, TerminalRef far) =>
            Shortest(plus, near, null) is { } feed && Shortest(far, minus, null) is { } back ? Fold(plus, [.. feed, new Step(far, null, element), .. back]) : null;
    }

    /// <summary>What joins an input to ground, from the input to the supply's minus, or to plus, from the supply's plus to the input.</summary>
    public Trail? Asking(Part controller, Input input)
    {
        var terminal = new TerminalRef(controller.Name, input.Terminal);
        return input.ActiveAtGround
            ? _minus is { } minus && Shortest(terminal, minus, controller.Name) is { } down ? Fold(terminal, down) : null
            : _plus is { } plus && Shortest(plus, terminal, controller.Name) is { } up ? Fold(plus, up) : null;
    }

    // A contact, an output or a fuse passes current on; a load, a coil, a pull-up or the supply itself is no way to somewhere else.
    private static bool Passes(Model model, Element element) =>
        element.Gate is not null and not Gate.WhileAwake
        || model.Protectors.Any(p => p.Element == element.Name)
        || (model.Sights.IsEmpty && model.Controller is null && model.Supply is null && model.Relays.IsEmpty && model.Charging.IsEmpty);

    private static IEnumerable<(TerminalRef From, Step Step)> Both(TerminalRef a, TerminalRef b, Wire? wire, Element? element) =>
        [(a, new Step(b, wire, element)), (b, new Step(a, wire, element))];

    private List<Step>? Shortest(TerminalRef start, TerminalRef goal, string? notThrough)
    {
        var cameBy = new Dictionary<TerminalRef, (TerminalRef From, Step Step)>();
        var queue = new Queue<TerminalRef>([start]);
        while (queue.TryDequeue(out var at) && at != goal)
        {
            var inside = notThrough is not null && Names.Same(at.Part, notThrough);
            foreach (var step in _steps[at].Where(s => s.To != start && (s.To == goal || (s.To != _plus && s.To != _minus)) && (!inside || s.Wire is not null) && cameBy.TryAdd(s.To, (at, s))))
            {
                queue.Enqueue(step.To);
            }
        }

        if (start != goal && !cameBy.ContainsKey(goal))
        {
            return null;
        }

        var way = new List<Step>();
        for (var at = goal; at != start; at = cameBy[at].From)
        {
            way.Add(cameBy[at].Step);
        }

        way.Reverse();
        return way;
    }

    private Trail Fold(TerminalRef start, List<Step> way)
    {
        var stations = new List<Station> { At(start) };
        var wires = new List<Wire?>();
        foreach (var step in way)
        {
            if (step.Wire is null && Names.Same(step.To.Part, stations[^1].Part.Name))
            {
                stations[^1] = stations[^1] with { Out = step.To, Through = step.Element ?? stations[^1].Through };
            }
            else
            {
                wires.Add(step.Wire);
                stations.Add(At(step.To));
            }
        }

        return new Trail([.. stations], [.. wires]);

        Station At(TerminalRef terminal) => new(_parts[terminal.Part].Part, _parts[terminal.Part].Model, terminal, terminal, null);
    }

    private sealed record Step(TerminalRef To, Wire? Wire, Element? Element);
}
