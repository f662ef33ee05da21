using System.Collections.Immutable;
using Loomwright.Findings;
using Loomwright.Quantities;

namespace Loomwright.Checks;

/// <summary>A starter whose current comes back through a wire of the loom.</summary>
internal static class NoEngineStrap
{
    public static Rule Rule { get; } = new(
        "no-engine-strap",
        Severity.Look,
        Severity.Look,
        "A starter whose current has no strap to come back by, only a wire of the loom.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. StarterReturn.In(study).Where(r => r.IsNoStrap).Select(r => new Finding(
            Rule.Code,
            Severity.Look,
            new Subject.OfWire(r.Strap.Name),
            r.Amps > 0
                ? "The current of {starter} comes back through {wire}, {size}: {amps} as computed, where its cable has {cable}."
                : "The current of {starter} comes back through {wire}, {size}, where its cable has {cable}.",
            "With no strap on the engine the starter's current takes what it finds: thin grounds of the loom, a control cable, a bearing. They get hot, and the starter turns slowly.",
            "Draw a strap from the engine to battery minus, as thick as the starter cable, on bare metal at both ends.",
            [
                Evidence.Of("starter", r.Starter),
                Evidence.Of("wire", r.Strap.Name),
                Evidence.Of("size", r.Strap.Size),
                Evidence.Of("amps", new Current(r.Amps)),
                Evidence.Of("cable", r.Cable.Size),
            ])),
    ];
}
