using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A resistor that turns as much into heat as a soldering iron: the load resistor beside an LED.</summary>
internal static class LoadResistorHot
{
    // Above this a bare resistor burns a finger and softens tape within a minute (common practice, no source).
    internal const double HotWatts = 5;

    public static Rule Rule { get; } = new(
        "load-resistor-hot",
        Severity.Note,
        Severity.Note,
        "A resistor that gets hot where it is fastened.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        return [.. study.Loom.Parts.Where(p => Names.Same(p.Kind, "resistor")).Select(p => Of(poses, p)).OfType<Finding>()];
    }

    private static Finding? Of(Poses poses, Part part)
    {
        var link = poses.Wiring.Links.ToList().FindIndex(l => !l.IsWire && Names.Same(l.Owner, part.Name));
        if (link < 0 || poses.All.IsEmpty)
        {
            return null;
        }

        double Watts(Pose m) => poses.Of(m, link) is var (volts, amps) ? volts * amps : 0;
        bool Flashes(Pose m) => Math.Abs(m.Settled.Pictures[^1].Amps[link]) < Math.Abs(m.Settled.Pictures[0].Amps[link]) / 2;
        var most = poses.All.MaxBy(Watts)!;
        return Watts(most) < HotWatts
            ? null
            : new Finding(
                Rule.Code,
                Severity.Note,
                new Subject.OfPart(part.Name),
                Flashes(most) ? "{resistor} turns {watts} into heat with {how}; while it flashes, about half of that." : "{resistor} turns {watts} into heat with {how}.",
                "All it takes comes out of it as heat. By common practice it burns fingers and softens tape and plastic.",
                "Screw it to bare metal with room around it, its leads up to it in sleeves that stand heat; never tape it into the loom. If it stands in for the lamps of a flasher, one that needs no load does without it.",
                [
                    Evidence.Of("resistor", part.Name),
                    Evidence.Of("watts", new Power(Watts(most))),
                    Evidence.Of("how", poses.How(most)),
                ]);
    }
}
