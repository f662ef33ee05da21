using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>What the battery gives while the bike stands: with everything at rest, and with the lock at park.</summary>
internal static class PositionDrains
{
    // Common practice, no source: a bike that stands four weeks should still start; over a weekend it must.
    private const double StandsDays = 28;
    private const double WeekendDays = 3;
    private const double UsualAmpHours = 10;

    public static Rule Rule { get; } = new(
        "position-drains",
        Severity.Note,
        Severity.Look,
        "A battery that is flat after days at rest, or after hours at park.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        if (poses.Paths.Source is not { } battery || !Names.Same(battery.Kind, "battery") || poses.Rest.Seen.IsDefault)
        {
            return [];
        }

        var ampHours = battery.Settings.Number("capacity") ?? UsualAmpHours;
        var found = ImmutableArray.CreateBuilder<Finding>();
        var days = ampHours / poses.SupplyAmps(poses.Rest) / 24;
        if (poses.SupplyAmps(poses.Rest) > 0 && days < StandsDays && HasAnOff(poses))
        {
            found.Add(AtRest(poses, battery, ampHours, days));
        }

        foreach (var (control, position) in Parks(poses))
        {
            var amps = poses.SupplyAmps(poses.At(poses.Rest.Positions.With(control, position)));
            if (amps > 0 && ampHours / amps / 24 < StandsDays)
            {
                found.Add(AtPark(poses, control, position, ampHours, amps));
            }
        }

        return found.ToImmutable();
    }

    // A set-up on the bench without anything to turn off is not left standing.
    private static bool HasAnOff(Poses poses) => Enumerable.Range(0, poses.Wiring.Controls.Length).Any(c => Names.Same(poses.Wiring.Controls[c].Positions[poses.Rest.Positions[c]], "off"));

    // Which position lets the key out the contact table does not tell; its name does.
    private static IEnumerable<(int Control, int Position)> Parks(Poses poses) =>
        from c in Enumerable.Range(0, poses.Wiring.Controls.Length)
        from p in Enumerable.Range(0, poses.Wiring.Controls[c].Positions.Length)
        where p != poses.Rest.Positions[c] && Names.Fold(poses.Wiring.Controls[c].Positions[p]).StartsWith("park", StringComparison.Ordinal)
        select (c, p);

    private static Finding AtRest(Poses poses, Part battery, double ampHours, double days) => new(
        Rule.Code,
        days < WeekendDays ? Severity.Look : Severity.Note,
        new Subject.OfPart(battery.Name),
        "With everything at rest {battery} gives {amps}: {hold} are gone in {time}.",
        "A bike that stands over a holiday does not start after it, and a lead-acid battery left flat does not come back. By common practice what is left on at rest stays under a few milliamps.",
        "Key off and nothing switched on, put a meter in the ground lead (never while cranking; its red plug back to V after) and open one fuse after the other: the one at which the current falls has it behind it. Then put what takes it behind the lock.",
        [
            Evidence.Of("battery", battery.Name),
            Evidence.Of("amps", new Current(poses.SupplyAmps(poses.Rest))),
            Evidence.Of("hold", Poses.Printed(ampHours, "Ah")),
            Evidence.Of("time", Time(days)),
        ]);

    private static Finding AtPark(Poses poses, int control, int position, double ampHours, double amps) => new(
        Rule.Code,
        Severity.Note,
        new Subject.OfPart(poses.Wiring.Controls[control].Name),
        "At {position} {lock} lets {amps} flow: {hold} are gone in {time}.",
        "The key can be taken out there on many locks, and the lamps are easily overlooked by day.",
        "Use it for as long as it is meant for. Lamps with LEDs last ten times as long.",
        [
            Evidence.Of("lock", poses.Wiring.Controls[control].Name),
            Evidence.Of("position", poses.Wiring.Controls[control].Positions[position]),
            Evidence.Of("amps", new Current(amps)),
            Evidence.Of("hold", Poses.Printed(ampHours, "Ah")),
            Evidence.Of("time", Time(ampHours / amps / 24)),
        ]);

    private static string Time(double days) => days < 2 ? Poses.Printed(days * 24, "hours") : Poses.Printed(Math.Round(days), "days");
}
