using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>Law: a stop lamp worked by one brake only, because the bike has one brake switch.</summary>
internal static class StopLampFromOneBrake
{
    public static Rule Rule { get; } = new(
        "stop-lamp-from-one-brake",
        Severity.Note,
        Severity.Look,
        "Law: a stop lamp that only one of the two brakes lights.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        var country = study.Loom.Conditions.Country;
        var law = Law.Choose(country, Law.UnitedStates("FMVSS 108"), Law.GreatBritain);
        return Brakes.In(poses) is [{ Lights.IsEmpty: false } only] ? [Found(poses, only, law, country)] : [];
    }

    private static Finding Found(Poses poses, Brakes brake, Law law, string? country) => law.Finding(
        Rule.Code,
        country,
        new Subject.OfPart(brake.Part.Name),
        "{lamp} is lit by {switch} alone; no switch is drawn at the other brake.",
        "In {where}, by {law}, both brakes work the stop lamp; older machines may be excepted, in Great Britain those first used before {date}.",
        "Fit a switch at the other brake and join it beside {switch}.",
        [
            Evidence.Of("switch", brake.Part.Name),
            Evidence.Of("lamp", string.Join(" and ", brake.Lights.Keys.Order().Select(s => Words.Name(poses.Wiring.Sights[s].Name)))),
            Evidence.Of("date", "April 1986"),
        ]);
}
