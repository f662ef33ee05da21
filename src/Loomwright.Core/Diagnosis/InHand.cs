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
    private readonly HashSet<string> _unfused = new(Names.Comparer);

    public InHand(Loom loom)
    {
        _loom = loom;
        _models = loom.Parts.Where(p => Kinds.Find(p.Kind) is not null).DistinctBy(p => p.Name, Names.Comparer).ToDictionary(p => p.Name, p => Kinds.Find(p.Kind)!.Build(p), Names.Comparer);
        foreach (var source in loom.Parts.Where(p => _models.GetValueOrDefault(p.Name)?.Supply is not null))
        {
            var supply = _models[source.Name].Supply!;
            var (feed, back) = loom.Ground == GroundSide.Negative ? (supply.Plus, supply.Minus) : (supply.Minus, supply.Plus);
            _unfused.UnionWith([source.Name, .. loom.Wires.Where(w => Ends(w).Contains(new(source.Name, back))).Select(w => w.Name)]);
            BeforeAnyFuse(new(source.Name, feed));
            MinusOff = source.Kind == "bench supply" ? $"key off, black clip lead off {source.Name} first" : $"key off, {(loom.Ground == GroundSide.Negative ? "minus" : "the ground lead")} off {source.Name} first (on a bench, its black clip lead)";
        }
    }

    /// <summary>What is done before hands or tools go where no fuse protects them.</summary>
    public string MinusOff { get; } = "key off, minus off the battery first";

    /// <summary>Whether it is on the battery, on the first fuse, or on what lies between them.</summary>
    public bool IsUnfused(Check check) => check.Kind == CheckKind.Ground || _unfused.Contains(check.Subject);

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

    private void BeforeAnyFuse(TerminalRef start)
    {
        var reached = new HashSet<TerminalRef>();
        var next = new Stack<TerminalRef>([start]);
        while (next.TryPop(out var at))
        {
            if (reached.Add(at))
            {
                _unfused.Add(at.Part);
                foreach (var wire in _loom.Wires.Where(w => Ends(w).Contains(at)))
                {
                    _unfused.Add(wire.Name);
                    next.Push(wire.From == at ? wire.To : wire.From);
                }
            }
        }
    }
}
