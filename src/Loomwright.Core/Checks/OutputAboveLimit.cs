using System.Collections.Immutable;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>An output whose load takes more for good than the output may give.</summary>
internal static class OutputAboveLimit
{
    public static Rule Rule { get; } = new(
        "output-above-limit",
        Severity.Look,
        Severity.Look,
        "An output of a load controller that its load takes above its limit.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) => [.. Trip.In(study).Where(t => t.IsAboveLimit).Select(t => Found(study.Paths, t))];

    private static Finding Found(Paths paths, Trip trip) => new(
        Rule.Code,
        Severity.Look,
        new Subject.OfTerminal(trip.At),
        "From {terminal} {loads} would take {amps}; it trips above {limit}.",
        "The output switches itself off each time it is asked for: computed with {when}.",
        "Spread the load over two outputs, take a smaller lamp, or feed it through a relay with a fuse of its own and let the output carry only the coil.",
        trip.Facts(paths));
}
