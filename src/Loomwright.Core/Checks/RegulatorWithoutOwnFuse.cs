using System.Collections.Immutable;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>A charging lead with no fuse between regulator and battery.</summary>
internal static class RegulatorWithoutOwnFuse
{
    public static Rule Rule { get; } = new(
        "regulator-without-own-fuse",
        Severity.Stop,
        Severity.Stop,
        "A charging lead from the regulator to the battery with no fuse in it.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. from regulator in Regulator.In(study.Paths)
           where !regulator.Fuses.Any()
           select new Finding(
               Rule.Code,
               Severity.Stop,
               new Subject.OfTerminal(regulator.Live),
               "No fuse lies between {regulator} and {feed}: the charge goes over {wires}.",
               "It carries the charge one way, but rubbed through, or with a shorted rectifier, the battery feeds the fault with all it has, whether the key is in or not.",
               "Give the charging lead a fuse of its own at the battery end, a step above what the alternator gives, and within what the wire carries.",
               [
                   Evidence.Of("regulator", Called.At(study.Paths, regulator.Live)),
                   Evidence.Of("feed", Called.At(study.Paths, study.Paths.Feed)),
                   Evidence.Of("wires", string.Join(", ", regulator.Way.Select(t => t.Wire?.Name).OfType<string>())),
               ]),
    ];
}
