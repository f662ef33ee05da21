using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>Law: a main beam that no tell-tale shows the rider.</summary>
internal static class MainBeamUntold
{
    public static Rule Rule { get; } = new(
        "main-beam-untold",
        Severity.Note,
        Severity.Note,
        "Law: a main beam without a tell-tale.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        return
        [
            .. from s in Enumerable.Range(0, poses.Wiring.Sights.Length)
               where Headlamps.IsMain(study.Loom, poses.Wiring.Sights[s])
               let lit = poses.All.Where(m => Poses.IsOn(m.Seen[s].Symbol)).ToList()
               let unlit = poses.All.Where(m => !Poses.IsOn(m.Seen[s].Symbol)).ToList()
               where lit.Count > 0 && unlit.Count > 0
               where !TellTales(poses).Any(t => lit.All(m => Poses.IsOn(m.Seen[t].Symbol)) && unlit.Any(m => !Poses.IsOn(m.Seen[t].Symbol)))
               select Found(poses, s, lit[0], study.Loom.Conditions.Country),
        ];
    }

    private static IEnumerable<int> TellTales(Poses poses) =>
        Enumerable.Range(0, poses.Wiring.Sights.Length).Where(s => Names.Same(poses.Paths.Loom.Part(poses.Wiring.Sights[s].Part)!.Kind, "tell-tale"));

    private static Finding Found(Poses poses, int sight, Pose pose, string? country)
    {
        var law = Law.UnitedNations("", read: false);
        return law.Finding(
            Rule.Code,
            country,
            new Subject.OfPart(poses.Wiring.Sights[sight].Part),
            "{lamp} is lit with {how}, and no tell-tale shows it.",
            "The rider does not see it from the saddle and dazzles whoever comes. In {where}, by {law}, main beam has a tell-tale.",
            "Feed a tell-tale from the lead of {lamp}.",
            [Evidence.Of("lamp", Words.Name(poses.Wiring.Sights[sight].Name)), Evidence.Of("how", poses.How(pose))]);
    }
}
