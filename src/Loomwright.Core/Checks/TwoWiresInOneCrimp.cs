using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>Plugs and blades with more than one wire on a terminal.</summary>
internal static class TwoWiresInOneCrimp
{
    public static Rule Rule { get; } = new(
        "two-wires-in-one-crimp",
        Severity.Note,
        Severity.Note,
        "Two or more wires on a terminal that takes one crimp.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. study.Ends
            .Where(e => IsCrimped(study.Paths, e.At) && !IsUnderAScrew(e.End))
            .GroupBy(e => e.At)
            .Where(g => g.Count() > (IsFuse(study.Paths, g.Key) ? 2 : 1))
            .Select(g => new Finding(
                Rule.Code,
                Severity.Note,
                new Subject.OfTerminal(g.Key),
                "{wires} share the one crimp of {terminal}.",
                "A crimp is made for one wire. With two in it the thinner one is held badly, and when it slips out both circuits are suspect.",
                "Join them in a splice a little before it and take one wire on. Or use a terminal made for two, with a die for both together, and tug at each one.",
                [
                    Evidence.Of("wires", string.Join(", ", g.Select(e => e.Wire.Name))),
                    Evidence.Of("terminal", Called.At(study.Paths, g.Key)),
                ])),
    ];

    private static bool IsCrimped(Paths paths, TerminalRef at) => paths.Terminal(at)?.Plug is not null
        || paths.Loom.Part(at.Part)?.Kind is "relay" or "flasher" || IsFuse(paths, at);

    // The lead of a fuse holder can be joined anywhere along it, so two are nothing to tell of.
    private static bool IsFuse(Paths paths, TerminalRef at) => paths.Loom.Part(at.Part)?.Kind is "fuse" or "breaker";

    private static bool IsUnderAScrew(string? end) => end is not null && (end.Contains("ring", StringComparison.OrdinalIgnoreCase) || end.Contains("screw", StringComparison.OrdinalIgnoreCase));
}
