using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>A kill switch at which the engine runs at stop: shown by simulation.</summary>
internal static class KillSwitchWrongSense
{
    public static Rule Rule { get; } = new(
        "kill-switch-wrong-sense",
        Severity.Look,
        Severity.Look,
        "A kill switch of the wrong sense, or one that stops nothing.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        return [.. KillSwitches.In(poses).Where(k => k.RunsStopped).Select(k => Found(poses, k))];
    }

    private static Finding Found(Poses poses, KillSwitches kill) => new(
        Rule.Code,
        Severity.Look,
        new Subject.OfPart(kill.Part.Name),
        kill.Runs ? "At stop {switch} leaves {load} working: it stops nothing." : "{load} works with {switch} at stop and not at run: it is of the other sense.",
        "There are two kinds: one opens the feed of the ignition, one closes and grounds a magneto. The wrong one is found when the engine should stop and does not.",
        kill.Runs
            ? "Follow the wires from {switch} to {load}: its contact must lie in the feed, or pull the ignition to ground. Look for a second feed that goes past it."
            : "Measure {switch} at run and at stop and correct the line stops by in the file. If it truly is of this sense, take the other kind.",
        [
            Evidence.Of("switch", kill.Part.Name),
            Evidence.Of("load", kill.Stops(poses)),
            Evidence.Of("stops by", kill.Part.Settings.Word("stops by") ?? "opening"),
        ]);
}
