using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>An interlock that is drawn and does not hold the starter: shown by simulation with the gear in.</summary>
internal static class StarterTurnsInGear
{
    public static Rule Rule { get; } = new(
        "starter-turns-in-gear",
        Severity.Look,
        Severity.Look,
        "A starter that turns in gear although a clutch or stand switch should hold it.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        var (neutral, clutch, stand) = (Sensor(poses, "neutral"), Sensor(poses, "clutch"), Sensor(poses, "side stand"));
        return
        [
            .. from pose in poses.All
               let starter = Starter(poses, pose)
               where starter is not null
               from hold in new[] { (Control: clutch, Is: "the clutch out", Other: stand), (Control: stand, Is: "the stand down", Other: clutch) }
               where hold.Control >= 0
               let there = InGear(poses, pose, neutral, hold.Control, hold.Other).FirstOrDefault(p => Starter(poses, p) == starter)
               where there is not null
               group (there, starter) by hold into found
               select Found(poses, found.Key.Control, found.Key.Is, found.First().there, found.First().starter!, neutral),
        ];
    }

    private static int Sensor(Poses poses, string senses) =>
        poses.Paths.Loom.Parts.FirstOrDefault(p => Names.Same(p.Kind, "sensor switch") && poses.Paths.IsWired(p) && p.Settings.Word("senses") is { } word && Names.Same(word, senses)) is { } part
            ? poses.Control(part.Name)
            : -1;

    // A sensor's rest is neutral, clutch out, stand down; in gear is its other position. What else could hold the starter lets it go.
    private static IEnumerable<Pose> InGear(Poses poses, Pose pose, int neutral, int hold, int other)
    {
        var positions = pose.Positions.With(hold, poses.Rest.Positions[hold]);
        positions = neutral < 0 ? positions : positions.With(neutral, 1 - poses.Rest.Positions[neutral]);
        return other < 0 ? [poses.At(positions)] : [poses.At(positions), poses.At(positions.With(other, 1 - poses.Rest.Positions[other]))];
    }

    private static string? Starter(Poses poses, Pose pose) =>
        pose.Seen.FirstOrDefault(s => s.Symbol == Symbol.Turns && Names.Same(poses.Paths.Loom.Part(s.Part)!.Kind, "starter"))?.Part;

    private static Finding Found(Poses poses, int hold, string state, Pose pose, string starter, int neutral) => new(
        Rule.Code,
        Severity.Look,
        new Subject.OfPart(poses.Wiring.Controls[hold].Name),
        neutral < 0 ? "{starter} turns with {state}, and no neutral switch is there to tell it may: {how}." : "{starter} turns in gear with {state}: {how}.",
        "The bike moves off on the starter, with nobody ready for it. {switch} is drawn, so it was meant to hold the starter.",
        "Let the start relay or its output ask {switch}: with the stand up and the clutch pulled, or in neutral. Look for a wire that goes past it.",
        [
            Evidence.Of("starter", starter),
            Evidence.Of("switch", poses.Wiring.Controls[hold].Name),
            Evidence.Of("state", state),
            Evidence.Of("how", poses.How(pose)),
        ]);
}
