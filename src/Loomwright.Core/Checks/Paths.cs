using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>What is joined to what as drawn, with no volts in it: for saying where a feed or a way back is missing.</summary>
internal sealed class Paths
{
    // Below this a resistance is a joint, not a load: far above any contact, far below any lamp.
    private const double JointOhms = 0.2;

    private readonly Dictionary<TerminalRef, List<Tie>> _at = [];

    public Paths(Loom loom)
    {
        Loom = loom;
        var ties = ImmutableArray.CreateBuilder<Tie>();
        ties.AddRange(loom.Wires.Select(w => new Tie(Via.Wire, w.From, w.To) { Wire = w }));
        ties.AddRange(loom.Shorts.Select(s => new Tie(Via.Joint, s.A, s.B)));
        foreach (var part in loom.Parts)
        {
            if (Kinds.Find(part.Kind) is not { } kind)
            {
                continue;
            }

            var model = kind.Build(part);
            Models.Add(part.Name, model);
            ties.AddRange(model.Elements.Where(e => e.Name != model.Supply?.Element && !model.Charging.Contains(e.Name)).Select(e => Inside(part, model, e)));
            ties.AddRange(model.Joints.Select(j => new Tie(Via.Joint, new TerminalRef(part.Name, j.Terminal), new TerminalRef(j.Part, ""))));
        }

        Ties = ties.ToImmutable();
        foreach (var tie in Ties)
        {
            Put(tie.A, tie);
            Put(tie.B, tie);
        }

        Source = loom.Parts.FirstOrDefault(p => Models.GetValueOrDefault(p.Name)?.Supply is not null);
        if (Source is not null)
        {
            var supply = Models[Source.Name].Supply!;
            var (feed, back) = loom.Ground == GroundSide.Negative ? (supply.Plus, supply.Minus) : (supply.Minus, supply.Plus);
            Feed = new TerminalRef(Source.Name, feed);
            Return = new TerminalRef(Source.Name, back);
        }
    }

    public Loom Loom { get; }

    /// <summary>The parts of known kinds with their models, in file order.</summary>
    public IEnumerable<(Part Part, Model Model)> Built => Loom.Parts.Where(p => Models.ContainsKey(p.Name)).Select(p => (p, Models[p.Name]));

    /// <summary>Models of the parts by the owner's names.</summary>
    public Dictionary<string, Model> Models { get; } = new(Names.Comparer);

    /// <summary>Wires first, then what lies inside the parts, in file order.</summary>
    public ImmutableArray<Tie> Ties { get; }

    /// <summary>The first supply in the file, or null.</summary>
    public Part? Source { get; }

    /// <summary>The supply terminal that is not joined to the frame.</summary>
    public TerminalRef Feed { get; }

    /// <summary>The supply terminal that is joined to the frame.</summary>
    public TerminalRef Return { get; }

    /// <summary>The supply's plus, whichever side is joined to the frame.</summary>
    public TerminalRef Plus => Loom.Ground == GroundSide.Negative ? Feed : Return;

    /// <summary>The supply's minus, whichever side is joined to the frame.</summary>
    public TerminalRef Minus => Loom.Ground == GroundSide.Negative ? Return : Feed;

    /// <summary>Ties that end on a terminal, in file order.</summary>
    public IReadOnlyList<Tie> At(TerminalRef terminal) => _at.GetValueOrDefault(terminal) ?? [];

    /// <summary>Whether any wire ends on the part.</summary>
    public bool IsWired(Part part) => Loom.Wires.Any(w => Names.Same(w.From.Part, part.Name) || Names.Same(w.To.Part, part.Name));

    /// <summary>The model's terminal, or null for a point inside the part.</summary>
    public Terminal? Terminal(TerminalRef at) => Models.GetValueOrDefault(at.Part)?.Terminals.FirstOrDefault(t => Names.Same(t.Mark, at.Terminal));

    /// <summary>Everything joined to a terminal through the ties let through, itself included; a shore is reached but not walked on from.</summary>
    public HashSet<TerminalRef> Joined(TerminalRef start, Func<Tie, bool> through, IReadOnlySet<TerminalRef>? shores = null)
    {
        var reached = new HashSet<TerminalRef> { start };
        var todo = new Queue<TerminalRef>([start]);
        while (todo.TryDequeue(out var at))
        {
            if (shores?.Contains(at) == true)
            {
                continue;
            }

            foreach (var next in At(at).Where(through).Select(l => l.Other(at)).Where(reached.Add))
            {
                todo.Enqueue(next);
            }
        }

        return reached;
    }

    /// <summary>The way with the fewest ties from a terminal to one that is an end; ties by file order. Null when there is none.</summary>
    public ImmutableArray<Tie>? Way(TerminalRef start, Func<TerminalRef, bool> isEnd, Func<Tie, bool> through)
    {
        var cameBy = new Dictionary<TerminalRef, Tie?> { [start] = null };
        var todo = new Queue<TerminalRef>([start]);
        while (todo.TryDequeue(out var at))
        {
            if (isEnd(at))
            {
                return Back(at, cameBy);
            }

            foreach (var tie in At(at).Where(through))
            {
                if (cameBy.TryAdd(tie.Other(at), tie))
                {
                    todo.Enqueue(tie.Other(at));
                }
            }
        }

        return null;
    }

    /// <summary>Controls whose contacts lie between the terminals and what is always live or always ground.</summary>
    /// <param name="terminals">Where to begin.</param>
    /// <param name="joined">Everything on the way, any position of any control.</param>
    public ImmutableArray<string> ControlsNear(IEnumerable<TerminalRef> terminals, out HashSet<TerminalRef> joined)
    {
        var rails = Joined(Feed, t => t.IsFixed);
        rails.UnionWith(Joined(Return, t => t.IsFixed));
        var near = terminals.SelectMany(t => Joined(t, tie => tie.Carries && tie.Via != Via.Output, rails)).ToHashSet();
        joined = near;
        return
        [
            .. Ties.Where(t => t.Via == Via.Contact && (near.Contains(t.A) || near.Contains(t.B)))
                .Select(t => ((Gate.ByControl)t.Element!.Gate!).Control)
                .Distinct(Names.Comparer),
        ];
    }

    private static ImmutableArray<Tie> Back(TerminalRef at, Dictionary<TerminalRef, Tie?> cameBy)
    {
        var way = new List<Tie>();
        while (cameBy[at] is { } tie)
        {
            way.Add(tie);
            at = tie.Other(at);
        }

        way.Reverse();
        return [.. way];
    }

    private static Tie Inside(Part part, Model model, Element element)
    {
        var via = element.Gate switch
        {
            _ when model.Protectors.Any(p => p.Element == element.Name) => Via.Fuse,
            Gate.ByControl when element.Curve is Ohms { ResistanceOhms: <= JointOhms } => Via.Contact,
            Gate.ByOutput => Via.Output,
            Gate.ByRelay or Gate.ByFlasher or Gate.Both when element.Curve is Ohms { ResistanceOhms: <= JointOhms } => Via.Relay,
            null when model.Controller is not null && element.Curve is Ohms { ResistanceOhms: <= JointOhms } => Via.Joint,
            _ when model.Controller is not null => Via.Load,
            _ when model.Sights.Any(s => s.Element == element.Name) => Via.Load,
            _ when element.Curve is Diode => Via.Diode,
            _ when element.Curve is Ohms { ResistanceOhms: <= JointOhms } => Via.Joint,
            _ => Via.Load,
        };
        return new Tie(via, new TerminalRef(part.Name, element.From), new TerminalRef(part.Name, element.To)) { Part = part, Element = element };
    }

    private void Put(TerminalRef at, Tie tie)
    {
        if (!_at.TryGetValue(at, out var list))
        {
            _at.Add(at, list = []);
        }

        list.Add(tie);
    }
}
