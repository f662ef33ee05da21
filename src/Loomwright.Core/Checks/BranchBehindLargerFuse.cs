using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>A thinner wire taken off behind a fuse that is meant for a thicker one.</summary>
internal static class BranchBehindLargerFuse
{
    public static Rule Rule { get; } = new(
        "branch-behind-larger-fuse",
        Severity.Note,
        Severity.Look,
        "A thinner branch taken off behind a fuse that fits only the thicker wire.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. study.Behind.Where(b => b.Trunk is not null).Select(b => new Finding(
            Rule.Code,
            b.Severity,
            new Subject.OfWire(b.Wires[0].Name),
            "Only {guard} stands before {wires}, {size}; it fits {trunk}, and {rule} allows the branch {allowed} at the most.",
            "Nothing else protects the branch: rubbed through it carries what the fuse of the thick wire lets pass. " + b.WhyTemplate,
            "Give the branch a small fuse of its own where it leaves the thick wire, or make it as thick. " + b.DoTemplate,
            b.Facts)),
    ];
}
