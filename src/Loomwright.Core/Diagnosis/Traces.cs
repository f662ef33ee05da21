using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Diagnosis;

/// <summary>Where a fault shows itself to the eye or to a meter on ohms, whatever it does to the current.</summary>
internal sealed class Traces(Loom loom)
{
    // A strand as thin as a hair is not always seen; half an ohm is near what probe leads have (judgement).
    private const double StrandSeen = 0.9, HalfAnOhmSeen = 0.9;
    private const string NoWay = "no good way through";

    private readonly Wiring _wiring = Wiring.Of(loom);

    /// <summary>Of all the faults of a loom.</summary>
    public static ImmutableArray<Trace> All(Loom loom)
    {
        var traces = new Traces(loom);
        return [.. Catalogue.List(loom).SelectMany(traces.Of)];
    }

    /// <summary>Every check that finds it, with what is found.</summary>
    public IEnumerable<Trace> Of(ListedFault listed) => listed.Fault switch
    {
        Fault.Open f => loom.Wire(f.Wire) is { } wire
            ? [.. Parts(wire.From, wire.To).Select(p => At(p, $"{f.Wire} is not in", LeftOut(listed))), OnWire(f.Wire, NoWay, 1)]
            : [],
        Fault.High f when loom.Wire(f.Joint) is not null => [OnWire(f.Joint, NoWay, HalfAnOhmSeen)],
        Fault.High f => Ground(f.Joint, HalfAnOhmSeen),
        Fault.Lost f => Ground(f.Ground, 1),
        Fault.Moved f => Parts(f.End, f.To).Select(p => At(p, $"{f.Wire} sits on {f.To}", 1)),
        Fault.Swapped f => Parts(f.A, f.B).Select(p => At(p, $"what sits on {First(f.A, f.B)} and on {Second(f.A, f.B)} is exchanged", 1)),
        Fault.Shorted f when Names.Same(f.A.Part, f.B.Part) =>
            [At(f.A.Part, $"{First(f.A, f.B)} and {Second(f.A, f.B)} touch", StrandSeen), new Trace(new Check(CheckKind.Plug, f.A.Part), $"a way from {First(f.A, f.B)} to {Second(f.A, f.B)}", 1)],
        Fault.Shorted f when listed.Causes.Any(c => c.Kind == "spare end bare") => Parts(f.A, f.B).Select(p => At(p, $"{f.A} and {f.B} touch", 1)),
        Fault.Shorted f => loom.Wires.Where(w => w.From == f.A).Select(w => OnWire(w.Name, $"a way from {f.A} to {f.B}", 1)),
        Fault.Dead f when Model(f.Part)?.DeadBy is not null => [At(f.Part, $"{f.Part} is not in, or blown", 1)],
        Fault.Dead f => [Alone(f.Part, "it does not work")],
        Fault.Stuck f => loom.Parts.SelectMany(Moving.Of).Where(m => Names.Same(m.Name, f.Switch)).Take(1).Select(m => Alone(m.Moving.Part, "it does not work")),
        Fault.Leak f => [Alone(f.Part, "it does not work")],
        Fault.Reversed f => [At(f.Part, $"plus and minus of {f.Part} are exchanged", 1)],
        Fault.Setting f => [Alone(f.Part, Low(f) ? "it is low" : $"{Repairs.Setting(f.Key)} is not as designed")],
        _ => [],
    };

    /// <summary>The terminal of a part, by its mark, that a fault is about; null where it is about the whole part or another one.</summary>
    public static string? Place(Loom loom, Fault fault, string part)
    {
        TerminalRef[] ends = fault switch
        {
            Fault.Open f when loom.Wire(f.Wire) is { } wire => [wire.From, wire.To],
            Fault.Moved f => [f.End, f.To],
            Fault.Swapped f => [f.A, f.B],
            Fault.Shorted f => [f.A, f.B],
            _ => [],
        };
        return ends.Where(e => Names.Same(e.Part, part)).Select(e => e.Terminal).FirstOrDefault();
    }

    // Two terminals in the order they have on the part, so that a pair is called one way.
    private TerminalRef First(TerminalRef a, TerminalRef b) => Order(a) <= Order(b) ? a : b;

    private TerminalRef Second(TerminalRef a, TerminalRef b) => First(a, b) == a ? b : a;

    private int Order(TerminalRef end) => Model(end.Part) is not { } model ? 0 : model.Terminals.Select(t => t.Mark).ToList().IndexOf(end.Terminal);

    private static Trace At(string part, string found, double chance) => new(new Check(CheckKind.Terminals, part), found, chance);

    private static Trace OnWire(string wire, string found, double chance) => new(new Check(CheckKind.Wire, wire), found, chance);

    private static Trace Alone(string part, string found) => new(new Check(CheckKind.Part, part), found, 1);

    private static IEnumerable<string> Parts(TerminalRef one, TerminalRef other) => new[] { one.Part, other.Part }.Distinct(Names.Comparer);

    // A ground with a lead of its own is mended at that lead.
    private IEnumerable<Trace> Ground(string ground, double chance) => GroundLeads.Of(_wiring, ground) is { IsEmpty: false } leads
        ? leads.Select(l => OnWire(l, NoWay, chance))
        : [new Trace(new Check(CheckKind.Ground, ground), NoWay, chance)];

    private static double LeftOut(ListedFault listed)
    {
        var all = listed.Prior();
        return all <= 0 ? 0 : listed.Causes.Where(c => c.Kind.Contains("left out", StringComparison.Ordinal)).Sum(c => c.Times * Priors.Row(c.Kind).For(new PriorOptions())) / all;
    }

    private Model? Model(string part) => _wiring.Parts.FirstOrDefault(p => Names.Same(p.Name, part))?.Model;

    private bool Low(Fault.Setting f) => Model(f.Part) is { } model && model.WrongSettings.Any(w => w.Cause == WrongSetting.Low && Names.Same(w.Key, f.Key));
}
