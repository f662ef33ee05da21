using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Parts that can hurt someone or spoil something when they run unasked, by their kinds.</summary>
internal static class Risky
{
    public static bool IsStarter(Part part) => Is(part, "starter");

    public static bool IsPump(Part part) => Is(part, "fuel pump");

    public static bool IsCoil(Part part) => Is(part, "ignition coil");

    /// <summary>Made for seconds: on for ten of them at most on the bench, then off to cool.</summary>
    public static bool IsForSeconds(Part part) => IsStarter(part) || IsPump(part) || IsCoil(part);

    /// <summary>What sparks or injects: without it the engine stops.</summary>
    public static bool RunsEngine(Part part) => IsCoil(part) || Is(part, "injection unit");

    /// <summary>What to mind while it runs; empty for all else.</summary>
    public static ImmutableArray<string> Cautions(Part part) =>
        IsStarter(part) ? [Bench.Cautions.Starter]
        : IsPump(part) ? [Bench.Cautions.Pump]
        : IsCoil(part) ? [Bench.Cautions.Coil]
        : [];

    /// <summary>What to mind while a moment lasts: what runs in it, and what gets hot.</summary>
    public static ImmutableArray<string> Cautions(Loom loom, Frame frame) =>
    [
        .. frame.Seen.Where(s => s.Symbol is not (Symbol.Dark or Symbol.Silent or Symbol.Rests)).SelectMany(s => s.Symbol == Symbol.Sounds ? [Bench.Cautions.Horn] : Cautions(loom.Part(s.Part)!)),
        .. loom.Parts.Any(p => p.Kind == "resistor" && IsHot(p, frame)) ? [Bench.Cautions.HotResistor] : ImmutableArray<string>.Empty,
    ];

    private static bool IsHot(Part part, Frame frame)
    {
        var element = Kinds.Find(part.Kind)!.Build(part).Elements[0];
        var (one, other) = (new TerminalRef(part.Name, element.From), new TerminalRef(part.Name, element.To));
        return element.Curve is Ohms { ResistanceOhms: var ohms } && frame.Phases.Any(p => At(p, one) is { } a && At(p, other) is { } b && (a - b) * (a - b) / ohms >= LoadResistorHot.HotWatts);
    }

    private static double? At(Phase phase, TerminalRef terminal) => phase.Potentials.Where(p => p.Terminal.Equals(terminal)).Select(p => (double?)p.Potential.Volts).FirstOrDefault();

    private static bool Is(Part part, string kind) => Names.Same(part.Kind, kind);
}
