using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Sizing;

namespace Loomwright.Checks;

/// <summary>Rings for bolts of two sizes under one nut.</summary>
internal static class RingsUnalike
{
    public static Rule Rule { get; } = new(
        "rings-unalike",
        Severity.Note,
        Severity.Note,
        "Rings for bolts of different sizes on one stud.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. study.Ends.Select(e => (e.Wire.Name, e.At, Bolt: Ring.BoltOf(e.End)))
            .Where(e => e.Bolt is not null)
            .GroupBy(e => e.At)
            .Where(g => g.Select(e => e.Bolt).Distinct().Count() > 1)
            .Select(g => new Finding(
                Rule.Code,
                Severity.Note,
                new Subject.OfTerminal(g.Key),
                "On {terminal} sit rings for bolts of different sizes: {rings}.",
                "A ring too large for its bolt touches on an edge: it warms under current and works loose. One too small was drilled out, which leaves little of it.",
                "See which bolt it is and crimp rings for that one. {torques}",
                [
                    Evidence.Of("terminal", Called.At(study.Paths, g.Key)),
                    Evidence.Of("rings", string.Join(", ", g.Select(e => FormattableString.Invariant($"{e.Name} (M{e.Bolt})")))),
                    Evidence.Of("torques", Torques(g.Select(e => e.Bolt!.Value).Distinct().Order())),
                ])),
    ];

    private static string Torques(IEnumerable<int> bolts)
    {
        var listed = bolts.Select(b => (Bolt: b, Torque: Ring.Torque(b))).Where(t => t.Torque is not null)
            .Select(t => string.Create(CultureInfo.InvariantCulture, $"M{t.Bolt} {t.Torque:0.0} N·m")).ToList();
        return listed.Count == 0 ? "Tighten it as the maker of the part says." : $"Usual torque of a terminal screw: {string.Join(", ", listed)}; what the maker of the part says goes before it.";
    }
}
