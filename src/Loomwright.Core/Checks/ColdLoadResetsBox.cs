using System.Collections.Immutable;
using Loomwright.Findings;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>A box whose supply gives way while a cold load starts.</summary>
internal static class ColdLoadResetsBox
{
    public static Rule Rule { get; } = new(
        "cold-load-resets-box",
        Severity.Note,
        Severity.Look,
        "A load controller that loses its supply while a cold lamp starts.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. from box in study.Tried.Wiring.Boxes
           let moment = study.Tried.Moments.FirstOrDefault(m => m.Settled.Events.Any(e => Happening.IsReset(e, box.Part)))
           where moment is not null
           select Found(study.Paths, box.Part, moment),
    ];

    // On the bench the supply is what it is, and the bike is not to blame.
    private static Finding Found(Paths paths, string box, Moment moment)
    {
        var onBench = paths.Models[paths.Source!.Name].Supply!.LimitAmps is not null;
        return new Finding(
            Rule.Code,
            onBench ? Severity.Note : Severity.Look,
            new Subject.OfPart(box),
            "With {when}: {event}.",
            "A box that resets forgets everything and starts anew; if the load is asked for again, it goes round for ever. It looks like a broken box and is a weak supply.",
            onBench
                ? "Start this load from a battery behind a small fuse, or leave it out while {supply} feeds the bench. The bike itself is not to blame."
                : "Look at the battery, at the size and length of the supply lead and at the ground of {box}. A fully charged battery of fitting size holds the box up.",
            [
                Evidence.Of("box", box),
                Evidence.Of("supply", paths.Source!.Name),
                Evidence.Of("when", moment.InWords),
                Evidence.Of("event", moment.Settled.Events.First(e => Happening.IsReset(e, box))),
            ]);
    }
}
