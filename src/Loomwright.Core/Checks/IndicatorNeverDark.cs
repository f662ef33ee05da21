using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>Law: an indicator that goes bright and dim instead of on and off.</summary>
internal static class IndicatorNeverDark
{
    public static Rule Rule { get; } = new(
        "indicator-never-dark",
        Severity.Note,
        Severity.Look,
        "Law: an indicator that goes bright and dim, not on and off.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        var stops = new Lazy<HashSet<int>>(() => [.. Brakes.In(poses).SelectMany(b => b.Lights.Keys)]);
        return
        [
            .. from s in Enumerable.Range(0, poses.Wiring.Sights.Length)
               let sight = poses.Wiring.Sights[s]
               where sight.Sight is Sight.Lamp && Names.Same(study.Loom.Part(sight.Part)!.Kind, "lamp") && !Headlamps.IsMain(study.Loom, sight) && !Headlamps.IsDipped(study.Loom, sight)
               let pose = poses.All.FirstOrDefault(m => Poses.Flashes(m.Seen[s].Symbol) && Between(poses, m, s) >= Light.DarkBelow)
               where pose is not null && !stops.Value.Contains(s)
               select Found(poses, s, pose, study.Loom.Conditions.Country),
        ];
    }

    // Light while what blinks is off, as a share of its light while it is on.
    private static double Between(Poses poses, Pose pose, int sight)
    {
        var (place, law) = (poses.Wiring.Sights[sight], ((Sight.Lamp)poses.Wiring.Sights[sight].Sight).Law);
        double Of(Picture picture) => Light.Of(law, picture.SquareVolts[place.Link], picture.Amps[place.Link]);
        return Of(pose.Settled.Pictures[^1]) / Of(pose.Settled.Pictures[0]);
    }

    private static Finding Found(Poses poses, int sight, Pose pose, string? country)
    {
        var law = Law.GreatBritain;
        return law.Finding(
            Rule.Code,
            country,
            new Subject.OfPart(poses.Wiring.Sights[sight].Part),
            "Between its flashes {lamp} keeps {share} of its light, with {how}.",
            "In {where}, by {law}, indicators go on and off, not bright and dim: in sunlight a lamp that never goes dark is not seen to flash. What is no indicator may do so.",
            "Take the indicator's feed off whatever else feeds that filament, or use a bulb with a filament for each.",
            [
                Evidence.Of("lamp", Words.Name(poses.Wiring.Sights[sight].Name)),
                Evidence.Of("share", Poses.Printed(100 * Between(poses, pose, sight), "%")),
                Evidence.Of("how", poses.How(pose)),
            ]);
    }
}
