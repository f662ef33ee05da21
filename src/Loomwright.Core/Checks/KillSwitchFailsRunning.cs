using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A kill switch that one broken wire takes away while the engine runs on: each wire at it is left out in turn.</summary>
internal static class KillSwitchFailsRunning
{
    public static Rule Rule { get; } = new(
        "kill-switch-fails-running",
        Severity.Note,
        Severity.Note,
        "A kill switch that cannot stop the engine once one wire at it is broken.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        return
        [
            .. from kill in KillSwitches.In(poses)
               where kill.Runs && !kill.RunsStopped
               let broken = study.Loom.Wires.Where(w => EndsAt(w, kill.Part) && StillRuns(poses, w, kill)).Select(w => w.Name).ToList()
               where broken.Count > 0
               select Found(poses, kill, broken),
        ];
    }

    private static bool EndsAt(Wire wire, Part part) => Names.Same(wire.From.Part, part.Name) || Names.Same(wire.To.Part, part.Name);

    private static bool StillRuns(Poses poses, Wire wire, KillSwitches kill)
    {
        var broken = new Poses(new Paths(Patch.Apply(poses.Paths.Loom, new Fault.Open(wire.Name))), poses.Paths.Loom);
        return kill.Tries.Select(t => (Pose: broken.At(t.Stop.Positions), t.Sight)).Any(t => !t.Pose.Seen.IsEmpty && Poses.IsOn(t.Pose.Seen[t.Sight].Symbol));
    }

    private static Finding Found(Poses poses, KillSwitches kill, List<string> broken) => new(
        Rule.Code,
        Severity.Note,
        new Subject.OfPart(kill.Part.Name),
        "With {wires} broken, {switch} at stop leaves {load} working.",
        "A kill switch that closes to stop is told nothing by a broken wire: the engine runs on, and one notices when it should stop. One that opens to stop fails the other way: the engine stands still.",
        "By custom a magneto is stopped so. Try the switch before each ride. On battery ignition a switch that opens the feed is the better choice.",
        [
            Evidence.Of("switch", kill.Part.Name),
            Evidence.Of("wires", string.Join(" or ", broken)),
            Evidence.Of("load", kill.Stops(poses)),
        ]);
}
