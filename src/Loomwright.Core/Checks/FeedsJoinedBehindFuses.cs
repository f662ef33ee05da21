using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>A fuse that can come out and what is behind it stays live, because another way feeds it too.</summary>
internal static class FeedsJoinedBehindFuses
{
    public static Rule Rule { get; } = new(
        "feeds-joined-behind-fuses",
        Severity.Look,
        Severity.Look,
        "Two feeds joined behind their fuses, or a fuse with a wire past it.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        var found = ImmutableArray.CreateBuilder<Finding>();
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var fuse in paths.Source is null ? [] : paths.Ties.Where(t => t.Via == Via.Fuse))
        {
            if (told.Contains(fuse.Part!.Name) || Around(paths, fuse, fuse.A) is not { } toA || Around(paths, fuse, fuse.B) is not { } toB)
            {
                continue;
            }

            // Of the two ends the one further off is behind it.
            var (end, way) = toA.Length > toB.Length ? (fuse.A, toA) : (fuse.B, toB);
            var others = way.Where(t => t.Via == Via.Fuse).Select(t => t.Part!.Name).Except(toA.Length > toB.Length ? Names(toB) : Names(toA)).ToList();
            told.UnionWith(others);
            found.Add(Found(paths, fuse, end, way, others));
        }

        return found.ToImmutable();
    }

    private static IEnumerable<string> Names(ImmutableArray<Tie> way) => way.Select(t => t.Part?.Name).OfType<string>();

    private static ImmutableArray<Tie>? Around(Paths paths, Tie fuse, TerminalRef end) => paths.Way(paths.Feed, t => t.Equals(end), t => t.IsFixed && t != fuse);

    private static Finding Found(Paths paths, Tie fuse, TerminalRef end, ImmutableArray<Tie> way, List<string> others) => new(
        Rule.Code,
        Severity.Look,
        new Subject.OfPart(fuse.Part!.Name),
        others.Count > 0
            ? "{fuse} and {others} are joined behind: with {fuse} out, {end} stays live through {others}."
            : "{fuse} has a way past it: with {fuse} out, {end} stays live over {wires}.",
        others.Count > 0
            ? "Together they let more into a fault than the wire was meant for, and a circuit you think is dead after pulling one fuse is not."
            : "A fuse with a way past it protects nothing.",
        others.Count > 0 ? "Part the two feeds where they meet, or take one of the fuses out of the design." : "Take out the wire that leads past it.",
        [
            Evidence.Of("fuse", fuse.Part!.Name),
            Evidence.Of("others", string.Join(", ", others)),
            Evidence.Of("end", Called.At(paths, end)),
            Evidence.Of("wires", string.Join(", ", way.Select(t => t.Wire?.Name).OfType<string>())),
        ]);
}
