using Loomwright.Design;
using Loomwright.Drawing;
using Loomwright.Text;

namespace Loomwright.Web.Picture;

/// <summary>A stop on the way of a wire, and the wire that leads on from it.</summary>
/// <param name="Number">From 1 at the supply's plus.</param>
/// <param name="At">The terminal it comes in by.</param>
/// <param name="Out">The mark it goes on by where that is another, or null.</param>
/// <param name="Place">Where on the bike, or null.</param>
/// <param name="Next">The wire to the next stop; null at the last, and where metal sits on metal.</param>
/// <param name="Mark">Where its number stands in the picture.</param>
public sealed record Stop(int Number, TerminalRef At, string? Out, string? Place, Wire? Next, Mark Mark)
{
    /// <summary>The stops of the first line the wire lies in; its own two ends when it lies in none.</summary>
    internal static IReadOnlyList<Stop> Of(Loom loom, IEnumerable<LoadLine> lines, Wire wire)
    {
        var line = lines.FirstOrDefault(l => l.Wires.Contains(wire));
        return line is null
            ? [Make(1, wire.From, wire.From, wire, null), Make(2, wire.To, wire.To, null, wire)]
            : [.. line.Stations.Select((s, i) => Make(i + 1, i == 0 ? s.Out : s.In, s.Out, i < line.Wires.Length ? line.Wires[i] : null, i == 0 ? null : line.Wires[i - 1]))];

        Stop Make(int number, TerminalRef at, TerminalRef leaves, Wire? next, Wire? came)
        {
            var place = loom.Part(at.Part)?.Place;
            var by = next ?? came;
            return new(number, at, at == leaves ? null : leaves.Terminal, loom.Places.FirstOrDefault(p => place is not null && Names.Same(p.Key, place))?.Name ?? place, next, new(number, by?.Name, by is not null && Names.Same(by.To.Part, at.Part) ? 1 : 0, at.Part));
        }
    }
}
