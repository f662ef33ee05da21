using System.Collections.Immutable;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>An engine strap thinner than the starter cable.</summary>
internal static class EngineStrapThin
{
    public static Rule Rule { get; } = new(
        "engine-strap-thin",
        Severity.Note,
        Severity.Note,
        "An engine strap thinner than the cable to the starter.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. StarterReturn.In(study).Where(r => r is { IsThin: true, IsNoStrap: false }).Select(r => new Finding(
            Rule.Code,
            Severity.Note,
            new Subject.OfWire(r.Strap.Name),
            "{strap} brings the current of {starter} back with {size}; the cable there has {cable}.",
            "The same current flows in both, so the thinner one is where the volts are lost that the starter lacks on a cold morning.",
            "By custom the strap is as thick as the cable. If the starter turns well and the strap stays cool to the hand, leave it.",
            [
                Evidence.Of("starter", r.Starter),
                Evidence.Of("strap", r.Strap.Name),
                Evidence.Of("size", r.Strap.Size),
                Evidence.Of("cable", r.Cable.Size),
            ])),
    ];
}
