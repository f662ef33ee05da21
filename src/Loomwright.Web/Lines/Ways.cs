using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Web.Lines;

/// <summary>Finds the line of every load: the shortest way along wires, fuses, contacts and outputs. It says how things are drawn, not what flows.</summary>
internal static class Ways
{
    /// <summary>One line for every lamp and horn, in file order.</summary>
    public static ImmutableArray<LoadLine> Of(Loom loom)
    {
        var parts = loom.Parts
            .Select(p => (Part: p, Model: Bike.Model(p)))
            .ToDictionary(p => p.Part.Name, Names.Comparer);
        var supply = parts.Values.FirstOrDefault(p => p.Model.Supply is not null);
        var steps = Steps(loom, parts.Values);
        return [.. parts.Values.SelectMany(p => p.Model.Sights.Select(s => Line(p.Part, p.Model, s)))];

        LoadLine Line(Part part, Model model, Sight sight)
        {
            var name = sight.Name.Length == 0 ? part.Name : $"{part.Name}.{sight.Name}";
            var element = model.Elements.First(e => e.Name == sight.Element);
            var (from, to) = (new TerminalRef(part.Name, element.From), new TerminalRef(part.Name, element.To));
            var ends = supply.Model?.Supply is { } s ? (Plus: new TerminalRef(supply.Part.Name, s.Plus), Minus: new TerminalRef(supply.Part.Name, s.Minus)) : default;
            var way = supply.Model is null ? null : Whole(ends.Plus, from, to, ends.Minus) ?? Whole(ends.Plus, to, from, ends.Minus);
            return way is null ? new LoadLine(name, [], []) : Fold(name, ends.Plus, way, parts);

            List<Step>? Whole(TerminalRef plus, TerminalRef near, TerminalRef far, TerminalRef minus) =>
                Shortest(steps, plus, near) is { } feed && Shortest(steps, far, minus) is { } back
                    ? [.. feed, new Step(far, null, element), .. back]
                    : null;
        }
    }

    private static ILookup<TerminalRef, Step> Steps(Loom loom, IEnumerable<(Part Part, Model Model)> parts)
    {
        var along = loom.Wires.SelectMany(w => Both(w.From, w.To, w, null));
        var through = parts.SelectMany(p => p.Model.Elements
            .Where(e => Passes(p.Model, e))
            .SelectMany(e => Both(new(p.Part.Name, e.From), new(p.Part.Name, e.To), null, e)));
        var sitting = parts.SelectMany(p => p.Model.Joints.Where(j => loom.Part(j.Part) is not null).SelectMany(j => Both(new(p.Part.Name, j.Terminal), new(j.Part, ""), null, null)));
        return along.Concat(through).Concat(sitting).ToLookup(s => s.From, s => s.Step);

        static IEnumerable<(TerminalRef From, Step Step)> Both(TerminalRef a, TerminalRef b, Wire? wire, Element? element) =>
            [(a, new Step(b, wire, element)), (b, new Step(a, wire, element))];
    }

    // A contact, an output or a fuse passes current on; a load, a coil, a pull-up or the supply itself is no way to somewhere else.
    private static bool Passes(Model model, Element element) =>
        element.Gate is not null and not Gate.WhileAwake
        || model.Protectors.Any(p => p.Element == element.Name)
        || (model.Sights.IsEmpty && model.Controller is null && model.Supply is null && model.Relays.IsEmpty);

    private static List<Step>? Shortest(ILookup<TerminalRef, Step> steps, TerminalRef start, TerminalRef goal)
    {
        var cameBy = new Dictionary<TerminalRef, (TerminalRef From, Step Step)>();
        var queue = new Queue<TerminalRef>([start]);
        while (queue.TryDequeue(out var at) && at != goal)
        {
            foreach (var step in steps[at].Where(s => s.To != start && cameBy.TryAdd(s.To, (at, s))))
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
            way.Insert(0, cameBy[at].Step);
        }

        return way;
    }

    private static LoadLine Fold(string sight, TerminalRef plus, List<Step> way, Dictionary<string, (Part Part, Model Model)> parts)
    {
        var stations = ImmutableArray.CreateBuilder<Station>();
        var wires = ImmutableArray.CreateBuilder<Wire?>();
        stations.Add(At(plus));
        foreach (var step in way)
        {
            if (!Names.Same(step.To.Part, stations[^1].Part.Name) || step.Wire is not null)
            {
                wires.Add(step.Wire);
                stations.Add(At(step.To));
            }
            else
            {
                stations[^1] = stations[^1] with { Out = step.To, Through = step.Element };
            }
        }

        return new LoadLine(sight, stations.ToImmutable(), wires.ToImmutable());

        Station At(TerminalRef terminal)
        {
            var (part, model) = parts[terminal.Part];
            return new Station(part, model, terminal, terminal, null);
        }
    }

    private sealed record Step(TerminalRef To, Wire? Wire, Element? Element);
}
