using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>Law: a stop lamp that dims, flashes or goes out when another lamp or the horn is switched on.</summary>
internal static class StopLampDisturbed
{
    public static Rule Rule { get; } = new(
        "stop-lamp-disturbed",
        Severity.Note,
        Severity.Look,
        "Law: a stop lamp that another lamp or the horn changes.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        return
        [
            .. from brake in Brakes.In(poses)
               let control = poses.Control(brake.Part.Name)
               from lamp in brake.Lights.Where(l => !Poses.Flashes(l.Value)).Select(l => l.Key).Order()
               let change = Changes(poses, control, lamp).FirstOrDefault()
               where change is not null
               group change by lamp into changes
               select Found(poses, changes.Key, changes.First(), study.Loom.Conditions.Country),
        ];
    }

    // From every pose in which the brake lights it: one other control moved, something else comes on with it, and the stop lamp is no longer as it was.
    private static IEnumerable<Change> Changes(Poses poses, int brake, int lamp) =>
        from pose in poses.Bases(brake)
        let braked = poses.At(pose.Positions.With(brake, 1 - poses.Rest.Positions[brake]))
        where !braked.Seen.IsEmpty && braked.Seen[lamp].Symbol == Symbol.Lit
        from c in Enumerable.Range(0, poses.Wiring.Controls.Length)
        where c != brake && poses.Wiring.Controls[c].Name != Engine.Control.Name
        from p in Enumerable.Range(0, poses.Wiring.Controls[c].Positions.Length)
        where p != braked.Positions[c]
        let after = poses.At(braked.Positions.With(c, p))
        where !after.Seen.IsEmpty && IsDisturbed(after.Seen[lamp].Symbol, poses.Wiring.Controls[c].Momentary)
        let came = CameOn(poses, braked, after, lamp)
        where came >= 0
        select new Change(after, came, c, p);

    // A key turned elsewhere takes it away by intention; what is only held does not.
    private static bool IsDisturbed(Symbol now, bool momentary) => now == Symbol.Dim || Poses.Flashes(now) || (momentary && now == Symbol.Dark);

    private static int CameOn(Poses poses, Pose before, Pose after, int lamp) => Enumerable.Range(0, after.Seen.Length)
        .FirstOrDefault(s => s != lamp && poses.Wiring.Sights[s].Sight is Sight.Lamp or Sight.Horn && Poses.IsOn(after.Seen[s].Symbol) && !Poses.IsOn(before.Seen[s].Symbol), -1);

    private static Finding Found(Poses poses, int lamp, Change change, string? country)
    {
        var law = Law.GreatBritain;
        return law.Finding(
            Rule.Code,
            country,
            new Subject.OfPart(poses.Wiring.Sights[lamp].Part),
            "With the brake held, {lamp} {becomes} when {other} comes on ({control} at {position}).",
            "Whoever follows must not wonder whether you brake. In {where}, by {law}, no other lamp and not the horn may change a stop lamp. Mostly the two share a ground, and its resistance is too high.",
            "Give {lamp} a ground lead of its own, or mend the one they share. Measure the volts between that ground and battery minus while both are on.",
            [
                Evidence.Of("lamp", Words.Name(poses.Wiring.Sights[lamp].Name)),
                Evidence.Of("becomes", change.After.Seen[lamp].Symbol switch { Symbol.Dim => "goes dim", Symbol.Dark => "goes dark", _ => "begins to flash" }),
                Evidence.Of("other", Words.Name(poses.Wiring.Sights[change.CameOn].Name)),
                Evidence.Of("control", poses.Wiring.Controls[change.Control].Name),
                Evidence.Of("position", poses.Wiring.Controls[change.Control].Positions[change.Position]),
            ]);
    }

    private sealed record Change(Pose After, int CameOn, int Control, int Position);
}
