using Loomwright.Checks;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Sizing;
using Loomwright.Text;

namespace Loomwright.Fixes;

/// <summary>A fuse that the wire behind it does not carry: a smaller fuse where it still carries what flows, or a thicker wire. Never a larger fuse.</summary>
internal static class FuseAndWire
{
    // A fuse is used to three quarters of what is printed on it (common practice, no source).
    private const double UsedShare = 0.75;

    public static IEnumerable<Cure> Of(Pen pen, Finding finding)
    {
        if (finding.Where is not Subject.OfWire { Wire: var first } || pen.Study.Behind.FirstOrDefault(b => Names.Same(b.Wires[0].Name, first)) is not { } behind)
        {
            yield break;
        }

        if (behind is { Trunk: null, Guard.Kind: GuardKind.Fuse, Smaller: { } amps } && amps < behind.Guard.Rating.Amps && MostAmps(pen, behind.Guard.Part) <= UsedShare * amps)
        {
            var written = new Current(amps).Printed;
            yield return new Cure("smaller", behind.Guard.Part, $"Take {written} for {behind.Guard.Part} in place of {behind.Guard.Rating.Printed}", [pen.Setting(behind.Guard.Part, written, "rating")]);
        }

        if (behind.Thicker is { } size)
        {
            var wires = string.Join(", ", behind.Wires.Select(w => w.Name));
            yield return new Cure("thicker", first, $"Draw {wires} with {size} in place of {behind.Wires[0].Size}", [.. behind.Wires.Select(w => pen.Size(w, size))]);
        }
    }

    // The most that was seen through it; too much for certain when no answer was found.
    private static double MostAmps(Pen pen, string fuse)
    {
        var link = pen.Study.Poses.Wiring.Fuses.Where(f => Names.Same(f.Part, fuse)).Select(f => (int?)f.Link).FirstOrDefault();
        return link is null || pen.Study.Poses.All.IsEmpty ? double.PositiveInfinity : pen.Study.Poses.All.Max(p => Math.Abs(pen.Study.Poses.Of(p, link.Value).Amps));
    }
}
