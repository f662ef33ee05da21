using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A brake switch that does not light what the other one lights, or no lamp at all: shown by simulation.</summary>
internal static class BrakeLightsNothing
{
    public static Rule Rule { get; } = new(
        "brake-lights-nothing",
        Severity.Look,
        Severity.Look,
        "A brake switch that lights no stop lamp.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        var brakes = Brakes.In(poses);
        var stops = brakes.SelectMany(b => b.Lights.Keys).Distinct().Order().ToList();
        return
        [
            .. from brake in brakes
               let dark = stops.Where(s => !brake.Lights.ContainsKey(s)).ToList()
               where brake.Lights.IsEmpty || dark.Count > 0
               select Found(poses, brake, brakes.FirstOrDefault(b => !b.Lights.IsEmpty && b != brake), dark),
        ];
    }

    private static Finding Found(Poses poses, Brakes brake, Brakes? other, List<int> dark) => new(
        Rule.Code,
        Severity.Look,
        new Subject.OfPart(brake.Part.Name),
        other is null ? "{switch} lights no lamp in any position that was tried." : "{switch} does not light {lamp}, which {other} does.",
        "Whoever rides behind sees that brake too late. On the bike it is easily missed: with the other brake the lamp lights.",
        other is null
            ? "Follow the wire from {switch}: does it reach the lamp, or the input of the box that works it?"
            : "Join {switch} where {other} is joined: the same feed, and the same lead on to the lamp or the same input.",
        [
            Evidence.Of("switch", brake.Part.Name),
            Evidence.Of("other", other?.Part.Name ?? "none"),
            Evidence.Of("lamp", dark.Count == 0 ? "any lamp" : string.Join(" and ", dark.Select(s => Words.Name(poses.Wiring.Sights[s].Name)))),
        ]);
}
