using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Which parts and wires a line runs through, with the controls where its operations leave them.</summary>
internal sealed class Routes(Paths paths, IReadOnlyDictionary<string, string> positions)
{
    /// <summary>From a terminal to the nearest end that is wanted, in the order met; null when there is no way.</summary>
    public ImmutableArray<Tie>? Way(TerminalRef start, Func<TerminalRef, bool> isEnd, Tie? without = null) =>
        paths.Way(start, isEnd, t => t != without && (t.IsClosed(positions) || t.Via == Via.Diode));

    /// <summary>What the controls that were moved join now and did not at rest, or the reverse, each with the way to both its ends.</summary>
    /// <param name="moved">Controls away from rest.</param>
    /// <param name="rest">Every control at rest.</param>
    /// <param name="ends">Terminals a contact can matter to: inputs, loads; the supply's own are added.</param>
    public Reach OfControls(IEnumerable<string> moved, IReadOnlyDictionary<string, string> rest, IReadOnlyCollection<TerminalRef> ends)
    {
        var reach = Reach.None;
        foreach (var control in moved)
        {
            var contacts = paths.Ties.Where(t => t.Element?.Gate is Gate.ByControl g && Names.Same(g.Control, control) && t.IsClosed(positions) != t.IsClosed(rest));
            foreach (var contact in contacts)
            {
                bool IsEnd(TerminalRef t) => ends.Contains(t) || t.Equals(paths.Feed) || t.Equals(paths.Return);
                if (Way(contact.A, IsEnd, contact) is { } a && Way(contact.B, IsEnd, contact) is { } b && Touches(contact, a, b, ends))
                {
                    reach = reach.With(Of(a.Reverse())).With(new Reach([contact.Part!.Name], [])).With(Of(b));
                }
            }
        }

        return reach;
    }

    /// <summary>The parts and wires along a way.</summary>
    public static Reach Of(IEnumerable<Tie> way)
    {
        var parts = ImmutableArray.CreateBuilder<string>();
        var wires = ImmutableArray.CreateBuilder<string>();
        foreach (var tie in way)
        {
            if (tie.Wire is { } wire)
            {
                wires.Add(wire.Name);
            }

            parts.Add(tie.A.Part);
            parts.Add(tie.B.Part);
        }

        return new Reach([.. parts.Distinct(Names.Comparer)], wires.ToImmutable());
    }

    // A contact between feed and ground alone belongs to something else.
    private static bool Touches(Tie contact, ImmutableArray<Tie> a, ImmutableArray<Tie> b, IReadOnlyCollection<TerminalRef> ends) =>
        a.Concat(b).Append(contact).SelectMany(t => new[] { t.A, t.B }).Any(ends.Contains);
}
