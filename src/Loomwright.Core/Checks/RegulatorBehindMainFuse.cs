using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>A fuse between regulator and battery with the bike's loads on the regulator's side of it.</summary>
internal static class RegulatorBehindMainFuse
{
    public static Rule Rule { get; } = new(
        "regulator-behind-main-fuse",
        Severity.Note,
        Severity.Look,
        "A fuse that, opening while riding, leaves regulator and loads together without the battery.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) => [.. Regulator.In(study.Paths).Where(r => r.Fuses.Any()).Select(r => Found(study.Paths, r)).OfType<Finding>()];

    private static Finding? Found(Paths paths, Regulator regulator)
    {
        var side = paths.Joined(regulator.Live, t => t.Carries && !regulator.Fuses.Contains(t));
        var loads = paths.Ties.Where(t => t.Via == Via.Load && t.Part != regulator.Part && (side.Contains(t.A) || side.Contains(t.B))).Select(t => t.Part!.Name).Distinct(StringComparer.Ordinal).ToList();
        if (side.Contains(paths.Feed) || loads.Count == 0)
        {
            return null;
        }

        var boxes = loads.Where(l => paths.Models[l].Controller is not null).ToList();
        return new Finding(
            Rule.Code,
            boxes.Count > 0 ? Severity.Look : Severity.Note,
            new Subject.OfPart(regulator.Fuses.Last().Part!.Name),
            "{fuse} lies between {regulator} and the battery, and {some} on the regulator's side of it.",
            boxes.Count > 0
                ? "If it opens while the engine runs, the battery that holds the volts down is gone: they can shoot up far enough to destroy {boxes} before the regulator follows. Many bikes left the factory like this, but without such a box."
                : "If it opens while the engine runs, the battery that holds the volts down is gone: lamps and electronics then see whatever the regulator lets through. Many bikes left the factory like this.",
            "Take the regulator's plus to the battery with a fuse of its own, beside the main fuse and not behind it.",
            [
                Evidence.Of("fuse", regulator.Fuses.Last().Part!.Name),
                Evidence.Of("regulator", Called.At(paths, regulator.Live)),
                Evidence.Of("some", loads.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $"{loads[0]} and {loads.Count - 1} more sit") : $"{loads[0]} sits"),
                Evidence.Of("boxes", string.Join(", ", boxes)),
            ]);
    }
}
