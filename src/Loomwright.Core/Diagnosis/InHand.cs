using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Diagnosis;

/// <summary>How the things of a bike are taken in hand: what comes off first, and how each is tried.</summary>
internal sealed class InHand
{
    private readonly Loom _loom;
    private readonly Dictionary<string, Model> _models;
    private readonly HashSet<string> _stillLive = new(Names.Comparer);

    public InHand(Loom loom)
    {
        _loom = loom;
        _models = loom.Parts.Where(p => Kinds.Find(p.Kind) is not null).DistinctBy(p => p.Name, Names.Comparer).ToDictionary(p => p.Name, p => Kinds.Find(p.Kind)!.Build(p), Names.Comparer);
        foreach (var source in loom.Parts.Where(p => _models.GetValueOrDefault(p.Name)?.Supply is not null))
        {
            var supply = _models[source.Name].Supply!;
            var (feed, back) = loom.Ground == GroundSide.Negative ? (supply.Plus, supply.Minus) : (supply.Minus, supply.Plus);
            _stillLive.UnionWith(loom.Wires.Where(w => Ends(w).Contains(new(source.Name, back))).Select(w => w.Name));
            WithMainFuseOut(new(source.Name, feed));
            var lead = source.Kind == "bench supply" ? "black clip lead" : loom.Ground == GroundSide.Negative ? "minus" : "the ground lead";
            MinusOff = $"key off, {lead} off {source.Name} first{(source.Kind == "bench supply" ? "" : " (on a bench, its black clip lead)")}";
            MinusOn = $"{lead} on {source.Name} last";
        }
    }

    /// <summary>What is done before hands or tools go where taking the main fuse out does not take the battery away.</summary>
    public string MinusOff { get; } = "key off, minus off the battery first";

    /// <summary>What brings power back when all else is in its place.</summary>
    public string MinusOn { get; } = "minus on the battery last";

    /// <summary>
    /// Whether the battery can still reach it with the main fuse out: on the battery or on that fuse, between them, or behind
    /// another fuse or the starter's unfused cable. All of it where no one fuse at the battery is the main one.
    /// </summary>
    public bool IsUnfused(Check check) => check.Kind == CheckKind.Ground || _stillLive.Contains(check.Subject);

    /// <summary>Whether it is a load controller, which nobody tries by itself.</summary>
    public bool IsBox(string part) => _models.GetValueOrDefault(part)?.Controller is not null;

    /// <summary>What to do for a check, as a sentence.</summary>
    public string Ask(Check check) => check.Kind != CheckKind.Part || _models.GetValueOrDefault(check.Subject) is not { } model ? check.Ask
        : model.Controller is not null ? $"leave {check.Subject} in its place, put no battery on its pins, and read what is set in it and printed on it: is it as the design has it?"
        : model.Supply is not null ? $"meter on volts, across the posts of {check.Subject} with nothing on it: is it as full as the design has it, and the kind printed on it the same?"
        : !model.Controls.IsEmpty ? $"take the plug of {check.Subject} out, meter on ohms between its terminals, and work it through its positions: does it open and close as the design has it?"
        : check.Ask;

    /// <summary>Where the design has what sits on a part: each terminal by its mark, with its wires and their colours; in the order of its terminals.</summary>
    public ImmutableArray<(string Mark, string Wires)> Designed(string part) => _models.GetValueOrDefault(part) is not { } model ? [] :
    [
        .. from terminal in model.Terminals
           let wires = _loom.Wires.Where(w => Ends(w).Contains(new(part, terminal.Mark))).Select(w => w.Colour is { } colour ? $"{w.Name}, {WireColours.InWords(colour)}" : w.Name).ToList()
           select (terminal.Mark, wires.Count == 0 ? "empty" : string.Join("; ", wires)),
    ];

    private static TerminalRef[] Ends(Wire wire) => [wire.From, wire.To];

    private void WithMainFuseOut(TerminalRef feed)
    {
        var bare = Reached(feed, (part, element) => element.Gate is null && !_models[part.Name].Protectors.Any(p => p.Element == element.Name));
        var fuses = _loom.Parts.Where(p => p.Kind == "fuse" && bare.Any(t => Names.Same(t.Part, p.Name))).ToList();
        var main = fuses.Count == 1 ? fuses[0] : fuses.FirstOrDefault(f => Names.Same(f.Name, "main fuse"));
        var live = Reached(feed, (part, _) => part != main);
        _stillLive.UnionWith(live.Select(t => t.Part));
        _stillLive.UnionWith(_loom.Wires.Where(w => Ends(w).Any(live.Contains)).Select(w => w.Name));
    }

    // Everything the battery can reach without going through a load: a contact or an output leads on in some state.
    private HashSet<TerminalRef> Reached(TerminalRef start, Func<Part, Element, bool> isWay)
    {
        List<(TerminalRef A, TerminalRef B)> ways = [.. _loom.Wires.Select(w => (w.From, w.To))];
        foreach (var part in _loom.Parts.Where(p => _models.ContainsKey(p.Name)))
        {
            var model = _models[part.Name];
            ways.AddRange(model.Elements.Where(e => Leads(model, e) && isWay(part, e)).Select(e => (new TerminalRef(part.Name, e.From), new TerminalRef(part.Name, e.To))));
            ways.AddRange(model.Joints.Select(j => (new TerminalRef(part.Name, j.Terminal), new TerminalRef(j.Part, ""))));
        }

        var from = ways.Concat(ways.Select(w => (A: w.B, B: w.A))).ToLookup(w => w.A, w => w.B);
        var reached = new HashSet<TerminalRef> { start };
        var next = new Stack<TerminalRef>([start]);
        while (next.TryPop(out var at))
        {
            foreach (var other in from[at].Where(reached.Add))
            {
                next.Push(other);
            }
        }

        return reached;
    }

    // Below this a resistance is a joint, not a load: far above any contact, far below any lamp.
    private static bool Leads(Model model, Element element) => element.Name != model.Supply?.Element && !model.Charging.Contains(element.Name)
        && !model.Sights.Any(s => s.Element == element.Name) && element.Curve is Diode or Ohms { ResistanceOhms: <= 0.2 };
}
