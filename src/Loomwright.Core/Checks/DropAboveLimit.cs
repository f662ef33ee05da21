using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Sizing;

namespace Loomwright.Checks;

/// <summary>Loads that lose more in their wiring than the design aims at.</summary>
internal static class DropAboveLimit
{
    public static Rule Rule { get; } = new(
        "drop-above-limit",
        Severity.Note,
        Severity.Note,
        "Loads that lose more volts on the way there and back than the design's drop limit.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var limit = DropLimit.Of(study.Loom.Conditions);
        var above = study.Paths.Source is null ? [] : Lost(study, limit).Where(l => l.Share > limit.Limit).OrderByDescending(l => l.Share).ToList();
        return above.Count == 0 ? [] :
        [
            new Finding(
                Rule.Code,
                Severity.Note,
                new Subject.OfPart(above[0].Part),
                limit.IsBothWays ? "The way there and back takes more than the {limit} this design aims at from {loads}." : "The way there or the way back takes more than the {limit} this design aims at for each, from {loads}.",
                "Light falls much faster than the volts. What is lost sits in wires, plugs, contacts, fuse and box together, as computed.",
                "`loomwright size FILE` tells where it is lost: a thicker wire on the longest stretch first, then the ground. Or write another drop limit if this light is enough for you.",
                [
                    Evidence.Of("loads", string.Join(", ", above.Select(l => $"{Words.Name(l.Load)} ({new Share(l.Share)})"))),
                    Evidence.Of("limit", new Share(limit.Limit).ToString()),
                ]),
        ];
    }

    // At the moment of its most current. A starter has a limit of its own; what lies in a row with another load has no drop of its own.
    private static IEnumerable<(string Load, string Part, double Share)> Lost(Study study, DropLimit limit)
    {
        var (paths, tried) = (study.Paths, study.Tried);
        var fed = paths.Joined(paths.Feed, t => t.Carries && t.Via != Via.Diode);
        var returned = paths.Joined(paths.Return, t => t.IsFixed || t.Via is Via.Contact or Via.Relay);
        var (plus, minus) = (tried.Wiring.NodeOf(paths.Plus)!.Value, tried.Wiring.NodeOf(paths.Minus)!.Value);
        foreach (var sight in tried.Wiring.Sights.Where(s => paths.Loom.Part(s.Part)?.Kind != "starter" && !study.Guards.IsDimmed(s.Name)))
        {
            var tie = paths.Ties.FirstOrDefault(t => t.Part?.Name == sight.Part && t.Element?.Name == sight.Sight.Element);
            if (tie is null || !((fed.Contains(tie.A) && returned.Contains(tie.B)) || (fed.Contains(tie.B) && returned.Contains(tie.A))))
            {
                continue;
            }

            var moment = tried.Moments.Where(m => m.Settled is { Outcome: Outcome.Settled, Pictures.IsEmpty: false }).MaxBy(m => Math.Abs(m.Settled.Pictures[0].Amps[sight.Link]));
            if (moment?.Settled.Pictures[0] is { } picture && Math.Abs(picture.Across(tried.Wiring.Links[sight.Link])) > 1)
            {
                var supply = picture.Volts[plus] - picture.Volts[minus];
                var link = tried.Wiring.Links[sight.Link];
                var back = Math.Min(picture.Volts[link.From], picture.Volts[link.To]) - picture.Volts[minus];
                yield return (sight.Name, sight.Part, limit.Counted(supply - Math.Abs(picture.Across(link)), back) / supply);
            }
        }
    }
}
