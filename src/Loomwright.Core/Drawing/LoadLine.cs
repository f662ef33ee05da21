using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;

namespace Loomwright.Drawing;

/// <summary>A part on a line.</summary>
/// <param name="In">Where the line enters it.</param>
/// <param name="Out">Where it leaves; the same terminal for a stud, a splice or the supply.</param>
/// <param name="Through">The element between the two, or null.</param>
public sealed record Station(Part Part, Model Model, TerminalRef In, TerminalRef Out, Element? Through);

/// <summary>The shortest way of one load from the supply's plus to its minus along wires, fuses, contacts and outputs. It says how the bike is joined, not what flows.</summary>
/// <param name="Sight">The load's name as in a frame: <c>part</c> or <c>part.element</c>.</param>
/// <param name="Stations">From plus to minus; empty when the file draws no whole way.</param>
/// <param name="Wires">One fewer than the stations; null where metal sits on metal.</param>
public sealed record LoadLine(string Sight, ImmutableArray<Station> Stations, ImmutableArray<Wire?> Wires)
{
    /// <summary>One for everything that is seen or heard, in file order.</summary>
    public static ImmutableArray<LoadLine> All(Loom loom)
    {
        var trace = new Trace(loom);
        return [.. loom.Parts.SelectMany(p => trace.Model(p.Name)!.Sights.Select(s => One(p, s)))];

        LoadLine One(Part part, Sight sight)
        {
            var name = sight.Name.Length == 0 ? part.Name : $"{part.Name}.{sight.Name}";
            return trace.Through(part, trace.Model(part.Name)!.Elements.First(e => e.Name == sight.Element)) is { } trail
                ? new(name, trail.Stations, trail.Wires)
                : new(name, [], []);
        }
    }
}
