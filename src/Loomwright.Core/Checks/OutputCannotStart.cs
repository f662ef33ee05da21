using System.Collections.Immutable;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>An output that carries its load for good and yet trips on its first, cold moment.</summary>
internal static class OutputCannotStart
{
    public static Rule Rule { get; } = new(
        "output-cannot-start",
        Severity.Look,
        Severity.Look,
        "An output of a load controller that trips on the first, cold moment of its load.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) => [.. Trip.In(study).Where(t => !t.IsAboveLimit).Select(t => Found(study.Paths, t))];

    private static Finding Found(Paths paths, Trip trip) => new(
        Rule.Code,
        Severity.Look,
        new Subject.OfTerminal(trip.At),
        "{terminal} would carry {loads} warm, {amps} of its {limit}, but trips on the first moment.",
        "A cold filament takes many times its current for some milliseconds, and this output stands more than its limit for no longer than {stands}. Computed with {when}.",
        "Read in the manual how long the output stands an inrush and write it under trips after. If it is as short as that, use another output, LED lamps, or a relay.",
        [.. trip.Facts(paths), Evidence.Of("stands", FormattableString.Invariant($"{trip.Output.TripsAfter.TotalMilliseconds:0.###} ms"))]);
}
