using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>A flasher made for filament lamps that has too little load: with LEDs it stays lit, goes slow or hurries.</summary>
internal static class FlasherBelowItsLoad
{
    private const double NominalVolts = 12;
    private const double FlowsAmps = 0.001;

    public static Rule Rule { get; } = new(
        "flasher-below-its-load",
        Severity.Look,
        Severity.Look,
        "A flasher that goes by its load and has too little of it.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        return [.. poses.Wiring.Flashers.Where(f => f.Facts.Law is FlasherLaw.Heat or FlasherLaw.LoadSensing).Select(f => Of(poses, f)).OfType<Finding>()];
    }

    private static Finding? Of(Poses poses, FlasherPlace flasher)
    {
        var loaded = poses.All.Select(m => (Pose: m, Amps: Math.Abs(poses.Of(m, flasher.Link).Amps))).Where(x => x.Amps > FlowsAmps).ToList();
        if (loaded.Count == 0)
        {
            return null;
        }

        var (pose, amps) = loaded.MinBy(x => x.Amps);
        var rate = flasher.Facts.PerMinuteAt(amps);
        var fine = flasher.Facts.Law == FlasherLaw.Heat ? rate >= 60 : rate <= flasher.Facts.PerMinute;
        return fine
            ? null
            : new Finding(
                Rule.Code,
                Severity.Look,
                new Subject.OfPart(flasher.Part),
                rate is null ? "{flasher} is made for {made} and has {has}: with {how} the lamps stay lit and do not flash." : "{flasher} is made for {made} and has {has}: with {how} it goes {rate} times a minute.",
                "A thermal flasher needs the current of its lamps to warm it; an electronic one of two leads takes little current for a lamp that is out. LED lamps take a tenth.",
                "Fit an electronic flasher with three leads, which keeps its rate whatever the load. Or put a load resistor beside each LED lamp; it runs hot.",
                [
                    Evidence.Of("flasher", flasher.Part),
                    Evidence.Of("made", new Power(flasher.Facts.RatedAmps * NominalVolts)),
                    Evidence.Of("has", new Power(amps * NominalVolts)),
                    Evidence.Of("how", poses.How(pose)),
                    Evidence.Of("rate", rate is null ? "none" : Poses.Printed(rate.Value, "").Trim()),
                ]);
    }
}
