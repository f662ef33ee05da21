using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Sizing;

/// <summary>
/// What a settled moment would burn or break: a wire that would pass its insulation's class, two points that touch with
/// the supply between them, a box fed the wrong way round. Computed from the file, in words, the worst first.
/// </summary>
public static class Harm
{
    // Above this two touching points are a short, not a leak; below it a box's own reverse leakage (both judgement, no source).
    private const double ShortAboveAmps = 10;
    private const double ReversedBelowVolts = -1;

    /// <param name="loom">The design the frame was settled from, mistakes included.</param>
    /// <param name="frame">The moment.</param>
    public static ImmutableArray<string> Of(Loom loom, Frame frame)
    {
        if (frame.Phases.IsEmpty)
        {
            return [];
        }

        var volts = frame.Phases[0].Potentials.ToDictionary(p => p.Terminal, p => p.Potential.Volts);
        return [.. Shorts(loom, volts), .. Boxes(loom, volts), .. Wires(loom, frame)];
    }

    /// <summary>The least current that could burn anything: a smaller one through the whole loom harms no wire and is no short.</summary>
    public static double LeastAmps(Loom loom)
    {
        var around = new Surroundings(loom.Conditions.Ambient, loom.Conditions.Insulation);
        var rule = AmpacityRules.Of(loom.Conditions);
        return loom.Wires.Select(w => w.Size).Distinct().Select(s => MostAmps(Heat.Of(s, around, rule), around)).Append(ShortAboveAmps).Min();
    }

    private static IEnumerable<string> Shorts(Loom loom, Dictionary<TerminalRef, double> volts) =>
        from touch in loom.Shorts
        where volts.ContainsKey(touch.A) && volts.ContainsKey(touch.B)
        let amps = Math.Abs(volts[touch.A] - volts[touch.B]) / touch.Resistance.Ohms
        where amps > ShortAboveAmps
        select $"{touch.A} touches {touch.B}: a short, about {About(amps)}";

    private static IEnumerable<string> Boxes(Loom loom, Dictionary<TerminalRef, double> volts) =>
        from part in loom.Parts
        let box = Kinds.Find(part.Kind)?.Build(part).Controller
        where box is not null
        let plus = volts.GetValueOrDefault(new(part.Name, part.Defect is Defect.Reversed ? box.Ground : box.Supply))
        let minus = volts.GetValueOrDefault(new(part.Name, part.Defect is Defect.Reversed ? box.Supply : box.Ground))
        where plus - minus < ReversedBelowVolts
        select $"{part.Name} is fed the wrong way round: that can destroy it, and what it does then cannot be computed";

    private static IEnumerable<string> Wires(Loom loom, Frame frame)
    {
        var rule = AmpacityRules.Of(loom.Conditions);
        var around = new Surroundings(loom.Conditions.Ambient, loom.Conditions.Insulation);
        var heats = loom.Wires.Select(w => w.Size).Distinct().ToDictionary(s => s, s => Heat.Of(s, around, rule));
        return
        [
            .. from seen in frame.Phases[0].Wires
               let wire = loom.Wire(seen.Wire)
               where wire is not null
               let heat = heats[wire.Size]
               let mostAmps = MostAmps(heat, around)
               let amps = Math.Abs(seen.Current.Amps)
               where amps > mostAmps
               orderby amps / mostAmps descending
               select $"{wire.Name} ({wire.Size}) carries about {About(amps)}: above about {About(mostAmps)} its insulation passes {around.Insulation} ({heat.By})",
        ];
    }

    private static double MostAmps(Heat heat, Surroundings around) => Math.Sqrt(Math.Max(0, around.Insulation.Celsius - heat.Air.Celsius) / heat.KelvinPerSquareAmp);

    // Two figures: a current that burns is not known better.
    private static string About(double amps)
    {
        var unit = Math.Pow(10, Math.Floor(Math.Log10(amps)) - 1);
        return string.Create(CultureInfo.InvariantCulture, $"{Math.Round(amps / unit) * unit:0.##} A");
    }
}
