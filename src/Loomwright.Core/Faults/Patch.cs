using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Faults;

/// <summary>The design with one thing wrong. A fault that names nothing in the loom changes nothing.</summary>
public static class Patch
{
    /// <summary>What two touching terminals make: a closed contact's 10 mΩ (judgement, no source).</summary>
    public const double TouchOhms = 0.010;

    /// <summary>The loom with that fault in it, beside all that is wrong with it already. A swap is made in one go: both sides at once.</summary>
    public static Loom Apply(Loom loom, Fault fault) => fault switch
    {
        Fault.Open f => Without(loom, w => Names.Same(w.Name, f.Wire)),
        Fault.Moved f => loom with { Wires = [.. loom.Wires.Select(w => Names.Same(w.Name, f.Wire) ? Moved(w, f.End, f.To) : w)] },
        Fault.Swapped f => loom with { Wires = [.. loom.Wires.Select(w => w with { From = Other(w.From, f.A, f.B), To = Other(w.To, f.A, f.B) })] },
        Fault.Lost f => Lost(loom, f.Ground, GroundLeads.Of(Wiring.Of(loom), f.Ground)),
        Fault.Shorted f => loom with { Shorts = loom.Shorts.Add(new Short(f.A, f.B, new Resistance(TouchOhms))) },
        Fault.Dead f => WithDefect(loom, f.Part, new Defect.Dead(f.Inside)),
        Fault.Reversed f => WithDefect(loom, f.Part, new Defect.Reversed()),
        Fault.High f => High(loom, f),
        Fault.Stuck f => Moving.Find(loom, f.Switch, f.At) is { } moving ? WithDefect(loom, moving.Part, new Defect.Stuck(moving.Control, f.At)) : loom,
        Fault.Leak f => WithDefect(loom, f.Part, new Defect.Leaks(new Resistance(f.Ohms))),
        Fault.Setting f => loom with { Parts = [.. loom.Parts.Select(p => Names.Same(p.Name, f.Part) ? OtherSetting.In(p, f.Key, f.Value) ?? p : p)] },
        _ => throw new InvalidOperationException("a fault of no known form"),
    };

    private static Loom Without(Loom loom, Func<Wire, bool> gone) => loom with { Wires = [.. loom.Wires.Where(w => !gone(w))] };

    // Without a lead of its own it is the metal it sits on that is lost.
    private static Loom Lost(Loom loom, string ground, ImmutableArray<string> leads) =>
        leads.IsEmpty ? WithDefect(loom, ground, new Defect.Loose(null)) : Without(loom, w => leads.Contains(w.Name, Names.Comparer));

    private static Loom High(Loom loom, Fault.High fault)
    {
        ImmutableArray<string> wires = loom.Wire(fault.Joint) is { } wire ? [wire.Name] : GroundLeads.Of(Wiring.Of(loom), fault.Joint);
        return wires.IsEmpty
            ? WithDefect(loom, fault.Joint, new Defect.Loose(new Resistance(fault.Ohms)))
            : loom with { Wires = [.. loom.Wires.Select(w => wires.Contains(w.Name, Names.Comparer) ? w with { Extra = new Resistance(w.Extra.Ohms + fault.Ohms) } : w)] };
    }

    private static Wire Moved(Wire wire, TerminalRef end, TerminalRef to) =>
        wire.From == end ? wire with { From = to } : wire.To == end ? wire with { To = to } : wire;

    private static TerminalRef Other(TerminalRef end, TerminalRef a, TerminalRef b) => end == a ? b : end == b ? a : end;

    private static Loom WithDefect(Loom loom, string part, Defect defect) =>
        loom with { Parts = [.. loom.Parts.Select(p => Names.Same(p.Name, part) ? p with { Defects = p.Defects.Add(defect) } : p)] };
}
