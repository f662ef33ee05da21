using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>A load controller, made for minus at the frame, on a bike that has plus there.</summary>
internal static class BoxOnPositiveGround
{
    public static Rule Rule { get; } = new(
        "box-on-positive-ground",
        Severity.Look,
        Severity.Look,
        "A load controller on a bike with plus at the frame.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        if (study.Loom.Ground != GroundSide.Positive)
        {
            return [];
        }

        var paths = study.Paths;
        return
        [
            .. study.Loom.Parts.Where(p => paths.Models.GetValueOrDefault(p.Name)?.Controller is not null).Select(p => new Finding(
                Rule.Code,
                Severity.Look,
                new Subject.OfPart(p.Name),
                "{box} switches plus to its loads, and on this bike plus is joined to the frame.",
                "Every load then has plus at both ends, once from {box} and once from the frame, and does nothing; a bare output lead that touches the frame is no fault one sees, a bare feed is a short.",
                "Turn the bike over to minus at the frame first: battery round, {ground} negative, and see what else minds, as a coil, an ammeter, a rectifier. Else keep relays and fuses.",
                [Evidence.Of("box", p.Name), Evidence.Of("ground", "ground:")])),
        ];
    }
}
