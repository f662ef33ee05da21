using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.Checks;

/// <summary>Two large filaments of one bulb burning together: shown by simulation.</summary>
internal static class BothFilamentsAtOnce
{
    // A tail filament of 5 W beside a stop filament of 21 W is how those are made; two of this size are not (common practice, no source).
    private const double LargeWatts = 15;

    public static Rule Rule { get; } = new(
        "both-filaments-at-once",
        Severity.Note,
        Severity.Note,
        "A bulb whose dip and main filaments burn at once.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        return [.. study.Loom.Parts.Select(p => Of(poses, p)).OfType<Finding>()];
    }

    private static Finding? Of(Poses poses, Part part)
    {
        var filaments = poses.SightsOf(part.Name).Where(s => poses.Wiring.Links[poses.Wiring.Sights[s].Link].Curve is Filament).ToList();
        if (filaments.Count < 2)
        {
            return null;
        }

        foreach (var pose in poses.All)
        {
            var burning = filaments.Select(s => (Name: poses.Wiring.Sights[s].Sight.Name, Watts: Watts(poses, pose, s))).Where(x => x.Watts > LargeWatts).ToList();
            if (burning.Count > 1)
            {
                return new Finding(
                    Rule.Code,
                    Severity.Note,
                    new Subject.OfPart(part.Name),
                    "{filaments} of {lamp} burn at once with {how}: {watts} in one bulb.",
                    "By common practice the glass, the holder and its contacts are made for one of them at a time, and a flash of both; held on, they grow too hot.",
                    "Let a changeover switch or relay feed them in turn. If your lamp is made for both at once, leave it.",
                    [
                        Evidence.Of("lamp", part.Name),
                        Evidence.Of("filaments", string.Join(" and ", burning.Select(b => b.Name))),
                        Evidence.Of("how", poses.How(pose)),
                        Evidence.Of("watts", new Power(burning.Sum(b => b.Watts))),
                    ]);
            }
        }

        return null;
    }

    private static double Watts(Poses poses, Pose pose, int sight)
    {
        var (volts, amps) = poses.Of(pose, poses.Wiring.Sights[sight].Link);
        return volts * amps;
    }
}
