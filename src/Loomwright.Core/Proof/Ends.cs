using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Proof;

/// <summary>Where a fault sits: the terminals a tip would be put on to find it.</summary>
internal static class Ends
{
    public static ImmutableArray<TerminalRef> Of(Fault fault, Wiring wiring) => fault switch
    {
        Fault.Moved f => [.. new[] { f.To, f.End }.Concat(OfWire(f.Wire, wiring)).Distinct()],
        Fault.Swapped f => [f.A, f.B, .. OnTheWires(f.A, wiring), .. OnTheWires(f.B, wiring)],
        Fault.Shorted f => [f.A, f.B],
        Fault.Open f => OfWire(f.Wire, wiring),
        Fault.High f => [.. OfWire(f.Joint, wiring), .. OfPart(f.Joint, wiring)],
        Fault.Lost f => OfPart(f.Ground, wiring),
        Fault.Dead f => OfPart(f.Part, wiring),
        Fault.Reversed f => OfPart(f.Part, wiring),
        Fault.Leak f => OfPart(f.Part, wiring),
        Fault.Setting f => OfPart(f.Part, wiring),
        Fault.Stuck f => Moving.Find(wiring.Loom, f.Switch, f.At) is { } moving ? OfPart(moving.Part, wiring) : [],
        _ => [],
    };

    private static ImmutableArray<TerminalRef> OfWire(string name, Wiring wiring) => wiring.Loom.Wire(name) is { } wire ? [wire.From, wire.To] : [];

    private static IEnumerable<TerminalRef> OnTheWires(TerminalRef at, Wiring wiring) =>
        wiring.Loom.Wires.Where(w => w.From == at || w.To == at).Select(w => w.From == at ? w.To : w.From);

    private static ImmutableArray<TerminalRef> OfPart(string name, Wiring wiring) =>
        wiring.Parts.FirstOrDefault(p => Names.Same(p.Name, name)) is { } part
            ? [.. part.Model.Terminals.Select(t => new TerminalRef(part.Name, t.Mark)).Where(t => part.Model.Terminals.Length == 1 || wiring.Loom.Wires.Any(w => w.From == t || w.To == t))]
            : [];
}
