using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>A fuse larger than the wire behind it carries, by the rule the owner chose.</summary>
internal static class FuseAboveWire
{
    public static Rule Rule { get; } = new(
        "fuse-above-wire",
        Severity.Note,
        Severity.Look,
        "A fuse larger than the rule chosen allows the wire behind it.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. study.Behind.Where(b => b.Trunk is null).Select(b => new Finding(
            Rule.Code,
            b.Severity,
            new Subject.OfWire(b.Wires[0].Name),
            "{guard} is more than {rule} allows before {size} of wire, {allowed} at the most: {wires}.",
            b.WhyTemplate + " A lasting overload heats the wire before the fuse has to open.",
            b.DoTemplate + " Never take a larger fuse.",
            b.Facts)),
    ];
}
