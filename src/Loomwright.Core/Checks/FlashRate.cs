using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>Law: a lamp that flashes faster or slower than indicators may.</summary>
internal static class FlashRate
{
    private const double Least = 60;
    private const double Most = 120;
    private const double LeastFixedLoad = 90;

    public static Rule Rule { get; } = new(
        "flash-rate",
        Severity.Note,
        Severity.Look,
        "Law: a lamp that flashes outside the rate for indicators.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        var country = study.Loom.Conditions.Country;
        var american = Law.UnitedStates("FMVSS 108 with SAE J590");
        var law = Law.Choose(country, Law.UnitedNations(", 6.3.8.1", read: true), american, Law.Australia("ADR 19/00, 6.3.11.1.1"), Law.GreatBritain);
        var least = law == american && poses.Wiring.Flashers.Any(f => f.Facts.Law == FlasherLaw.LoadSensing) ? LeastFixedLoad : Least;
        return
        [
            .. poses.All
                .SelectMany(m => m.Seen.Where(s => s.FlashesPerMinute is { } rate && (rate < least || rate > Most)).Select(s => (Seen: s, Pose: m)))
                .GroupBy(x => x.Seen.FlashesPerMinute!.Value)
                .Select(g => Found(poses, g.Key, [.. g.Select(x => x.Seen)], g.First().Pose, law, least, country)),
        ];
    }

    private static Finding Found(Poses poses, double rate, ImmutableArray<Seen> seen, Pose pose, Law law, double least, string? country) => law.Finding(
        Rule.Code,
        country,
        new Subject.OfPart(seen[0].Part),
        "With {how} there are {rate} flashes a minute: {lamps}.",
        "In {where}, by {law}, indicators flash {least} to {most} times a minute. What is no indicator, as a beacon, may go otherwise.",
        "Set the blink rate of the box, or fit a flasher that suits the lamps.",
        [
            Evidence.Of("lamps", string.Join(", ", seen.Select(s => Words.Name(s.Name)).Distinct(StringComparer.Ordinal))),
            Evidence.Of("rate", Poses.Printed(rate, "").Trim()),
            Evidence.Of("how", poses.How(pose)),
            Evidence.Of("least", least),
            Evidence.Of("most", Most),
        ]);
}
