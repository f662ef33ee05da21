using System.Collections.Immutable;
using Loomwright.Findings;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>A box that switches everything off because its outputs together carry too much.</summary>
internal static class TotalAboveLimit
{
    public static Rule Rule { get; } = new(
        "total-above-limit",
        Severity.Look,
        Severity.Look,
        "A load controller whose outputs together take more than it may carry.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. from box in study.Tried.Wiring.Boxes
           let moment = study.Tried.Moments.FirstOrDefault(m => m.Settled.Events.Any(e => Happening.IsTotalTrip(e, box.Part)))
           where moment is not null
           select new Finding(
               Rule.Code,
               Severity.Look,
               new Subject.OfPart(box.Part),
               "With {when}: {event}.",
               "Each output keeps within its own limit, but together they pass what the box carries. Then every light goes out at once, at the moment when most is switched on.",
               "Let what takes most and is not needed always (grips, work lamps) give way in its when line, or feed it past the box through a relay and a fuse.",
               [
                   Evidence.Of("when", moment.InWords),
                   Evidence.Of("event", moment.Settled.Events.First(e => Happening.IsTotalTrip(e, box.Part))),
               ]),
    ];
}
