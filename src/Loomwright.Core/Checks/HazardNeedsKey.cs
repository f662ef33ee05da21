using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>Law: a control that makes both sides flash, but not with everything else at rest.</summary>
internal static class HazardNeedsKey
{
    public static Rule Rule { get; } = new(
        "hazard-needs-key",
        Severity.Note,
        Severity.Note,
        "Law: hazard warning that does not work with the key off.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        return
        [
            .. from c in Enumerable.Range(0, poses.Wiring.Controls.Length)
               from p in Enumerable.Range(0, poses.Wiring.Controls[c].Positions.Length)
               where p != poses.Rest.Positions[c]
               let both = poses.All.FirstOrDefault(m => m.Positions[c] == p && FlashesBothSides(poses, m, c))
               where both is not null
               let alone = poses.At(poses.Rest.Positions.With(c, p))
               where !Flashing(both).IsSubsetOf(Flashing(alone))
               select Found(poses, c, both, alone, study.Loom.Conditions.Country),
        ];
    }

    private static HashSet<int> Flashing(Pose pose) => [.. Enumerable.Range(0, pose.Seen.Length).Where(s => Poses.Flashes(pose.Seen[s].Symbol))];

    // Two sides: flashed one without the other while this control is at rest.
    private static bool FlashesBothSides(Poses poses, Pose pose, int control)
    {
        var all = Flashing(pose);
        if (all.Count < 2)
        {
            return false;
        }

        var sides = poses.All.Where(m => m.Positions[control] == poses.Rest.Positions[control]).Select(Flashing).Where(f => f.Count > 0 && f.IsSubsetOf(all)).ToList();
        return sides.Any(one => sides.Any(other => !one.Overlaps(other)));
    }

    private static Finding Found(Poses poses, int control, Pose both, Pose alone, string? country)
    {
        var law = Law.UnitedNations("", read: false);
        var asleep = Enumerable.Range(0, poses.Wiring.Boxes.Length).Where(b => !alone.Settled.State.Boxes[b].Awake && both.Settled.State.Boxes[b].Awake).Select(b => poses.Wiring.Boxes[b].Part).ToList();
        return law.Finding(
            Rule.Code,
            country,
            new Subject.OfPart(poses.Wiring.Controls[control].Name),
            asleep.Count > 0
                ? "{control} makes both sides flash with {how}; with the key off {box} sleeps, and they stay dark."
                : "{control} makes both sides flash with {how}; with the key off they stay dark.",
            "A bike left at the roadside must be seen with the key in a pocket. In {where}, by {law}, hazard warning works with the ignition off.",
            asleep.Count > 0 ? "Let {control} wake {box} as well: add its input to awake." : "Take its feed from before the lock, behind a fuse of its own.",
            [
                Evidence.Of("control", poses.Wiring.Controls[control].Name),
                Evidence.Of("how", poses.How(both)),
                Evidence.Of("box", asleep.Count > 0 ? string.Join(" and ", asleep) : "none"),
            ]);
    }
}
