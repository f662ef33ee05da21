using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>Law: an engine that runs with the headlamp dark.</summary>
internal static class HeadlampOutWhileRunning
{
    public static Rule Rule { get; } = new(
        "headlamp-out-while-running",
        Severity.Note,
        Severity.Note,
        "Law: a headlamp that can be dark while the engine runs.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        var engine = poses.Control("engine");
        var beams = Enumerable.Range(0, poses.Wiring.Sights.Length).Where(s => Headlamps.IsMain(study.Loom, poses.Wiring.Sights[s]) || Headlamps.IsDipped(study.Loom, poses.Wiring.Sights[s])).ToList();
        var coils = Ignitions.In(poses);
        if (engine < 0 || beams.Count == 0 || coils.IsEmpty)
        {
            return [];
        }

        var running = poses.Bases(engine).Select(m => poses.At(m.Positions.With(engine, 1 - poses.Rest.Positions[engine]))).Where(m => Ignitions.IsOn(m, coils));
        return running.FirstOrDefault(m => !beams.Any(s => Poses.IsOn(m.Seen[s].Symbol))) is { } dark ? [Found(poses, beams[0], dark, study.Loom.Conditions.Country)] : [];
    }

    private static Finding Found(Poses poses, int beam, Pose pose, string? country)
    {
        var law = Law.UnitedNations("", read: false);
        return law.Finding(
            Rule.Code,
            country,
            new Subject.OfPart(poses.Wiring.Sights[beam].Part),
            "The engine runs with {how}, and {lamp} is dark.",
            "In {where}, by {law}, dipped beam or a daytime lamp is lit whenever the engine runs. Older machines may have a switch for it.",
            "Let key on light the dipped beam. If the bike has a daytime lamp, that is enough.",
            [Evidence.Of("lamp", poses.Wiring.Sights[beam].Part), Evidence.Of("how", poses.How(pose))]);
    }
}
