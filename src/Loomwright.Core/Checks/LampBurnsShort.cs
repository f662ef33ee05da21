using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>Bulbs that get so many volts while the engine runs that they last less than a quarter of what they are made for.</summary>
internal static class LampBurnsShort
{
    private const double WorthTelling = 0.25;

    // Regulators hold 14.0 to 14.6 V (common practice, no source).
    private const double HighVolts = 14.8;

    public static Rule Rule { get; } = new(
        "lamp-burns-short",
        Severity.Note,
        Severity.Note,
        "Bulbs that get more volts than they are made to last at.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        var riding = poses.Control(Engine.Control.Name) is >= 0 and var engine ? (Control: engine, Position: poses.Wiring.Controls[engine].Positions.IndexOf(Engine.Riding)) : ((int Control, int Position)?)null;
        var lamps =
            from s in Enumerable.Range(0, poses.Wiring.Sights.Length)
            let category = Headlamps.Category(study.Loom, poses.Wiring.Sights[s]) is { } name ? LampCategory.Find(name) : null
            where category is not null
            let lit = poses.All.FirstOrDefault(m => Poses.IsOn(m.Seen[s].Symbol))
            where lit is not null
            let pose = riding is null ? lit : poses.At(lit.Positions.With(riding.Value.Control, riding.Value.Position))
            where !pose.Seen.IsEmpty && LampLife.Share(Volts(pose, s), category.TestVolts) < WorthTelling
            orderby Volts(pose, s) / category.TestVolts descending
            select (Place: s, Category: category, Pose: pose);
        var found = lamps.ToList();
        return found.Count == 0 ? [] : [Found(poses, [.. found.Select(f => f.Place)], found[0].Category, found[0].Pose)];
    }

    private static double Volts(Pose pose, int sight) => Math.Abs(pose.Seen[sight].Voltage.Volts);

    private static Finding Found(Poses poses, ImmutableArray<int> places, LampCategory category, Pose pose)
    {
        var volts = Volts(pose, places[0]);
        var share = LampLife.Share(volts, category.TestVolts);
        var hours = LampLife.Of(category.Name)?.TcHours;
        return new Finding(
            Rule.Code,
            Severity.Note,
            new Subject.OfPart(poses.Wiring.Sights[places[0]].Part),
            "{lamp} gets {volts} with {how}; a bulb of category {category} is tested at {test}.",
            hours is null
                ? "The life of a bulb falls about with the {power}th power of its volts: here to {share} of what it is at {test}. Bulbs so fed: {lamps}."
                : "The life of a bulb falls about with the {power}th power of its volts: here to {share}, from {hours} at {test} to {left}, by when about two of three have failed ({standard}). Bulbs so fed: {lamps}.",
            "Measure the volts at the battery with the engine at some revolutions. Above about {high} the regulator, or its ground or sense lead, is at fault. If the meter shows less than that, correct regulates at in the file.",
            [
                Evidence.Of("lamp", Words.Name(poses.Wiring.Sights[places[0]].Name)),
                Evidence.Of("volts", new Voltage(volts)),
                Evidence.Of("how", poses.How(pose)),
                Evidence.Of("category", category.Name),
                Evidence.Of("test", new Voltage(category.TestVolts)),
                Evidence.Of("power", LampLife.Exponent),
                Evidence.Of("share", string.Create(CultureInfo.InvariantCulture, $"{share * 100:0} %")),
                Evidence.Of("standard", "IEC 60810"),
                Evidence.Of("hours", Hours(hours ?? 0)),
                Evidence.Of("left", Hours((hours ?? 0) * share)),
                Evidence.Of("lamps", string.Join(", ", places.Select(s => Words.Name(poses.Wiring.Sights[s].Name)))),
                Evidence.Of("high", new Voltage(HighVolts)),
            ]);
    }

    private static string Hours(double hours) => string.Create(CultureInfo.InvariantCulture, $"{hours:0} h");
}
