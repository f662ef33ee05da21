using System.Collections.Immutable;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>Feed and ground joined by wires alone, whatever the switches do.</summary>
internal static class FeedJoinedToGround
{
    public static Rule Rule { get; } = new(
        "feed-joined-to-ground",
        Severity.Stop,
        Severity.Stop,
        "Wires, joints and fuses alone that lead from the feed to ground.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        if (paths.Source is null || paths.Way(paths.Feed, t => t.Equals(paths.Return), t => t.IsFixed) is not { } way)
        {
            return [];
        }

        var wires = way.Select(t => t.Wire).OfType<Design.Wire>().ToList();
        var fuses = way.Where(t => t.Via == Via.Fuse).Select(t => t.Part!.Name).ToList();
        return
        [
            new Finding(
                Rule.Code,
                Severity.Stop,
                wires.Count > 0 ? new Subject.OfWire(wires[^1].Name) : new Subject.OfPart(paths.Source.Name),
                "From {feed} to {return} leads a way of wires alone: {wires}. No switch and no load lies in it.",
                fuses.Count > 0
                    ? "The battery is shorted as soon as it is connected, and {fuses} opens at once; everything behind it is dead."
                    : "The battery is shorted as soon as it is connected, and nothing but the wires stands in between: they glow.",
                "Do not connect the battery. Look which of these wires ends on the wrong terminal; most likely one of its neighbours is meant.",
                [
                    Evidence.Of("feed", Called.At(paths, paths.Feed)),
                    Evidence.Of("return", Called.At(paths, paths.Return)),
                    Evidence.Of("wires", string.Join(", ", wires.Select(w => w.Name))),
                    Evidence.Of("fuses", string.Join(" or ", fuses)),
                ]),
        ];
    }
}
