using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>An LED that the leakage of an output keeps aglow while it is off: shown by simulation.</summary>
internal static class LampGlowsWhenOff
{
    public static Rule Rule { get; } = new(
        "lamp-glows-when-off",
        Severity.Look,
        Severity.Look,
        "An LED that glows on an output that is off.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        return
        [
            .. from s in Enumerable.Range(0, poses.Wiring.Sights.Length)
               where poses.Wiring.Sights[s].Sight is Sight.Lamp { Law: LightLaw.Led }
               from box in Enumerable.Range(0, poses.Wiring.Boxes.Length)
               from output in Enumerable.Range(0, poses.Wiring.Boxes[box].OutputNodes.Length)
               where Feeds(poses, box, output, s)
               let pose = poses.All.FirstOrDefault(m => !m.Settled.State.Boxes[box].Drive(output).On && m.Seen[s].Symbol == Symbol.Dim)
               where pose is not null
               select Found(poses, s, box, output, pose),
        ];
    }

    private static bool Feeds(Poses poses, int box, int output, int sight)
    {
        var place = poses.Wiring.Boxes[box];
        var joined = poses.Paths.Joined(new TerminalRef(place.Part, place.Facts.Outputs[output].Terminal), t => t.Via is Via.Wire or Via.Joint);
        var link = poses.Wiring.Links[poses.Wiring.Sights[sight].Link];
        return joined.Any(t => poses.Wiring.NodeOf(t) is { } node && node == link.From);
    }

    private static Finding Found(Poses poses, int sight, int box, int output, Pose pose)
    {
        var place = poses.Wiring.Boxes[box];
        return new Finding(
            Rule.Code,
            Severity.Look,
            new Subject.OfPart(poses.Wiring.Sights[sight].Part),
            "{lamp} glows although {output} is off: {amps} leak through it.",
            "An electronic output never opens as a switch does. A filament does not notice; an LED gives {light} of its light from it.",
            "Put a resistor of a kilohm from the lamp's feed to ground, or the resistor to ground the manual names for it. If nobody minds the glow, leave it.",
            [
                Evidence.Of("lamp", Words.Name(poses.Wiring.Sights[sight].Name)),
                Evidence.Of("output", $"{place.Part} {place.Facts.Outputs[output].Terminal} ({place.Facts.Outputs[output].Name})"),
                Evidence.Of("amps", new Current(poses.Of(pose, poses.Wiring.Sights[sight].Link).Amps)),
                Evidence.Of("light", Poses.Printed((pose.Seen[sight].LightShare ?? 0) * 100, "%")),
                Evidence.Of("how", poses.How(pose)),
            ]);
    }
}
