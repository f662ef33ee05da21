using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>Law: a stop lamp that goes on and off while a brake is held.</summary>
internal static class StopLampFlashes
{
    // UN Regulation 53, 6.14.7.1 (read): 4.0 ± 1.0 Hz.
    private const double EmergencyHertz = 4;
    private const double EmergencySpread = 1;

    public static Rule Rule { get; } = new(
        "stop-lamp-flashes",
        Severity.Note,
        Severity.Look,
        "Law: a stop lamp that does not burn steadily.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        var country = study.Loom.Conditions.Country;
        var law = Law.UnitedStates("FMVSS 108");
        return
        [
            .. Brakes.In(poses).SelectMany(b => b.Lights.Where(l => Poses.Flashes(l.Value)).Select(l => (l.Key, Brake: b)))
                .GroupBy(x => x.Key)
                .OrderBy(g => g.Key)
                .Select(g => law.Finding(
                    Rule.Code,
                    country,
                    new Subject.OfPart(poses.Wiring.Sights[g.Key].Part),
                    "{lamp} flashes while {switch} is held.",
                    "In {where}, by {law}, a stop lamp burns steadily. Where {emergency} counts, only the sign of an emergency stop flashes, {slowest} to {fastest} times a minute.",
                    "Take blinking out of the rule of its output, or feed it past the flasher.",
                    [
                        Evidence.Of("lamp", Words.Name(poses.Wiring.Sights[g.Key].Name)),
                        Evidence.Of("switch", g.First().Brake.Part.Name),
                        Evidence.Of("emergency", "UN Regulation 53, 6.14.7.1"),
                        Evidence.Of("slowest", 60 * (EmergencyHertz - EmergencySpread)),
                        Evidence.Of("fastest", 60 * (EmergencyHertz + EmergencySpread)),
                    ])),
        ];
    }
}
