using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>An LED, a diode or a box with plus and minus exchanged as drawn.</summary>
internal static class PolarisedPartReversed
{
    public static Rule Rule { get; } = new(
        "polarised-part-reversed",
        Severity.Look,
        Severity.Stop,
        "An LED, a diode or a box whose plus lead is on the ground side.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        if (paths.Source is null)
        {
            return [];
        }

        var onPlus = paths.Joined(paths.Plus, l => l.Carries && l.Via != Via.Diode);
        var onMinus = paths.Joined(paths.Minus, l => l.Carries && l.Via != Via.Diode);
        var found = ImmutableArray.CreateBuilder<Finding>();
        foreach (var part in study.Loom.Parts)
        {
            if (paths.Models.GetValueOrDefault(part.Name) is not { Polarity: { } polarity, Supply: null } model)
            {
                continue;
            }

            var (a, b) = (new TerminalRef(part.Name, polarity.Plus), new TerminalRef(part.Name, polarity.Minus));
            var plusGrounded = onMinus.Contains(a) && !onPlus.Contains(a);
            var minusFed = onPlus.Contains(b) && !onMinus.Contains(b);
            if (model.Elements is [{ Curve: Diode }] && model.Sights.IsEmpty)
            {
                // Across a load a diode points from ground to feed on purpose; in line it must point the other way.
                if (plusGrounded != minusFed && !onPlus.Contains(a) && !onMinus.Contains(b))
                {
                    found.Add(InLine(paths, part, a, b));
                }
                else if (onPlus.Contains(a) && !onMinus.Contains(a) && onMinus.Contains(b) && !onPlus.Contains(b))
                {
                    found.Add(Across(paths, part, a, b));
                }
            }
            else if (model.Sights.IsEmpty && model.Controller is null)
            {
                if (plusGrounded && minusFed)
                {
                    found.Add(Powered(paths, part, a, b));
                }
            }
            else if (plusGrounded && (minusFed || paths.At(b).All(l => l.Via is not Via.Wire)))
            {
                found.Add(model.Controller is null ? Dark(paths, part, a, b) : Box(paths, part, a, b));
            }
        }

        return found.ToImmutable();
    }

    private static Finding Dark(Paths paths, Part part, TerminalRef plus, TerminalRef minus) => Found(
        paths, part, plus, minus, Severity.Look,
        "{part} is connected the wrong way round: its plus lead {plus} is on the ground side.",
        "It conducts one way only. The wrong way round it stays dark and looks like a broken wire until a meter says otherwise.",
        "Exchange the wires on {plus} and {minus}. Not sure which lead is plus: try it alone through a resistor of a kilohm, both ways round.");

    private static Finding Box(Paths paths, Part part, TerminalRef plus, TerminalRef minus) => Found(
        paths, part, plus, minus, Severity.Stop,
        "{part} has plus and minus exchanged: its supply terminal {plus} is on the ground side.",
        "Many boxes do not survive this, even behind a fuse.",
        "Do not connect the supply. Exchange the wires on {plus} and {minus}, then look at the print on the case once more.");

    private static Finding Powered(Paths paths, Part part, TerminalRef plus, TerminalRef minus) => Found(
        paths, part, plus, minus, Severity.Stop,
        "{part} has plus and minus exchanged: {plus} is on the ground side.",
        "The diodes in it, across a coil or in a rectifier, then lie straight across the feed and short it; electronics in it do not live.",
        "Do not connect the supply. Exchange the wires on {plus} and {minus}.");

    private static Finding InLine(Paths paths, Part part, TerminalRef plus, TerminalRef minus) => Found(
        paths, part, plus, minus, Severity.Look,
        "{part} points against the current: {plus} is the end current must enter, and it is on the ground side of the two.",
        "Nothing behind it ever gets current.",
        "Turn it round: exchange the wires on {plus} and {minus}. The ring on the body marks the end current leaves by.");

    private static Finding Across(Paths paths, Part part, TerminalRef plus, TerminalRef minus) => Found(
        paths, part, plus, minus, Severity.Stop,
        "{part} joins feed to ground through itself: {plus} is on the feed and {minus} on the ground, with nothing else in the way.",
        "This way round it conducts: as soon as its feed is live it shorts the supply.",
        "Turn it round: exchange the wires on {plus} and {minus}. Across a load the ring on the body points to the feed.");

    private static Finding Found(
        Paths paths, Part part, TerminalRef plus, TerminalRef minus, Severity severity, string what, string why, string cure) => new(
        Rule.Code,
        severity,
        new Subject.OfPart(part.Name),
        what,
        why,
        cure,
        [
            Evidence.Of("part", part.Name),
            Evidence.Of("plus", Called.At(paths, plus)),
            Evidence.Of("minus", Called.At(paths, minus)),
        ]);
}
