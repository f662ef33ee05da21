using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>Law: a horn whose button does nothing although the ignition is on.</summary>
internal static class HornSilent
{
    public static Rule Rule { get; } = new(
        "horn-silent",
        Severity.Note,
        Severity.Note,
        "Law: a horn that does not always sound while the ignition is on.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        var coils = Ignitions.In(poses);
        return coils.IsEmpty ? [] :
        [
            .. from horn in Enumerable.Range(0, poses.Wiring.Sights.Length)
               where poses.Wiring.Sights[horn].Sight is Sight.Horn
               let button = Button(poses, horn)
               where button is not null
               let silent = poses.All.Where(m => Ignitions.IsOn(m, coils) && m.Positions[button.Value.Control] == poses.Rest.Positions[button.Value.Control])
                   .Select(m => poses.At(m.Positions.With(button.Value.Control, button.Value.Position)))
                   .FirstOrDefault(m => Ignitions.IsOn(m, coils) && m.Seen[horn].Symbol == Symbol.Silent)
               where silent is not null
               select Found(poses, horn, button.Value.Control, silent, study.Loom.Conditions.Country),
        ];
    }

    // What is held for it: with it the horn sounds somewhere, and let go it is silent there.
    private static (int Control, int Position)? Button(Poses poses, int horn)
    {
        foreach (var sounding in poses.All.Where(m => m.Seen[horn].Symbol == Symbol.Sounds))
        {
            foreach (var c in Enumerable.Range(0, poses.Wiring.Controls.Length).Where(c => poses.Wiring.Controls[c].Momentary && sounding.Positions[c] != poses.Rest.Positions[c]))
            {
                if (poses.At(sounding.Positions.With(c, poses.Rest.Positions[c])) is { Seen.IsEmpty: false } released && released.Seen[horn].Symbol == Symbol.Silent)
                {
                    return (c, sounding.Positions[c]);
                }
            }
        }

        return null;
    }

    private static Finding Found(Poses poses, int horn, int button, Pose silent, string? country)
    {
        var law = Law.Inspection;
        return law.Finding(
            Rule.Code,
            country,
            new Subject.OfPart(poses.Wiring.Sights[horn].Part),
            "With {how} the ignition is on, and {horn} stays silent.",
            "You want it in the moment you did not expect. In {where}, by {law}, the horn works whenever the ignition is on.",
            "Take the feed of {horn} or of its relay from where the ignition takes its own, behind a fuse. With a load controller, look what else its when line asks for beside {button}.",
            [
                Evidence.Of("horn", poses.Wiring.Sights[horn].Part),
                Evidence.Of("how", poses.How(silent)),
                Evidence.Of("button", poses.Wiring.Controls[button].Name),
            ]);
    }
}
