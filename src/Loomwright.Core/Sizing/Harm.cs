using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Sizing;

/// <summary>
/// What a settled moment would burn or break: a wire that would pass its insulation's class, two points that touch with
/// the supply between them, a box fed the wrong way round. While a starter turns a wire is held to what ten seconds do to it.
/// Computed from the file, in words, the worst first.
/// </summary>
public static class Harm
{
    /// <summary>Above this, what no load asks for is a short and not a leak (judgement, no source).</summary>
    internal const double ShortAboveAmps = 10;

    /// <summary>A box's own reverse leakage stays above this (judgement, no source).</summary>
    internal const double ReversedBelowVolts = -1;

    // Less than this warms no wire that is sold by a kelvin.
    private const double WarmsAmps = 0.1;

    /// <param name="loom">The design the frame was settled from, mistakes included.</param>
    /// <param name="frame">The moment.</param>
    public static ImmutableArray<string> Of(Loom loom, Frame frame) => [.. Found(loom, frame, WireLimit.IsStart(loom, frame)).Select(f => f.Words)];

    /// <summary>The same with the wire, box or touch that each is about; the two ways for the time of a start differ in nothing else.</summary>
    internal static ImmutableArray<(string What, string Words)> Found(Loom loom, Frame frame, bool isStart)
    {
        if (frame.Phases.IsEmpty)
        {
            return [];
        }

        var volts = frame.Phases[0].Potentials.ToDictionary(p => p.Terminal, p => p.Potential.Volts);
        return [.. Shorts(loom, volts), .. Boxes(loom, volts), .. Wires(loom, frame, isStart)];
    }

    /// <summary>The least current that could burn anything: a smaller one through the whole loom harms no wire and is no short.</summary>
    public static double LeastAmps(Loom loom) => loom.Wires.Select(w => WireLimit.Of(loom, w).ForLongAmps).Append(ShortAboveAmps).Min();

    private static IEnumerable<(string What, string Words)> Shorts(Loom loom, Dictionary<TerminalRef, double> volts) =>
        from touch in loom.Shorts
        where volts.ContainsKey(touch.A) && volts.ContainsKey(touch.B)
        let amps = Math.Abs(volts[touch.A] - volts[touch.B]) / touch.Resistance.Ohms
        where amps > ShortAboveAmps
        let what = $"{touch.A} touches {touch.B}"
        select (what, $"{what}: a short, about {About(amps)}");

    private static IEnumerable<(string What, string Words)> Boxes(Loom loom, Dictionary<TerminalRef, double> volts) =>
        from part in loom.Parts
        let box = Kinds.Find(part.Kind)?.Build(part).Controller
        where box is not null
        let plus = volts.GetValueOrDefault(new(part.Name, part.Defects.Contains(new Defect.Reversed()) ? box.Ground : box.Supply))
        let minus = volts.GetValueOrDefault(new(part.Name, part.Defects.Contains(new Defect.Reversed()) ? box.Supply : box.Ground))
        where plus - minus < ReversedBelowVolts
        select (part.Name, $"{part.Name} is fed the wrong way round: that can destroy it, and what it does then cannot be computed");

    private static IEnumerable<(string What, string Words)> Wires(Loom loom, Frame frame, bool isStart)
    {
        var carrying = (from seen in frame.Phases[0].Wires
                        let wire = loom.Wire(seen.Wire)
                        let amps = Math.Abs(seen.Current.Amps)
                        where wire is not null && amps >= WarmsAmps
                        select (Wire: wire, Limit: WireLimit.Of(loom, wire), Amps: amps)).ToList();
        return
        [
            .. from c in carrying
               where !c.Limit.IsAirTooHot
               let most = isStart ? c.Limit.StartingAmps : c.Limit.ForLongAmps
               where c.Amps > most
               orderby c.Amps / most descending
               select (c.Wire.Name, $"{c.Wire.Name} ({c.Wire.Size}) carries about {About(c.Amps)}: above about {About(most)} its insulation passes {c.Limit.Around.Insulation}{(isStart ? " within ten seconds" : "")} ({c.Limit.Heat.By})"),
            .. carrying.Where(c => c.Limit.IsAirTooHot).GroupBy(c => c.Limit.Around)
                .Select(g => ("the air", $"the air alone, {g.Key.Ambient}, passes the {g.Key.Insulation} that the insulation stands: {string.Join(", ", g.Select(c => c.Wire.Name))}")),
        ];
    }

    // Two figures: a current that burns is not known better.
    private static string About(double amps)
    {
        var unit = Math.Pow(10, Math.Floor(Math.Log10(amps)) - 1);
        return string.Create(CultureInfo.InvariantCulture, $"{Math.Round(amps / unit) * unit:0.##} A");
    }
}
