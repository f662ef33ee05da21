using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Faults;

/// <summary>The same faults as edits of links that are already compiled: the law is that both ways give one circuit.</summary>
internal static class WiringPatch
{
    /// <summary>The wiring with that fault in it; places and nodes stay as they are.</summary>
    public static Wiring With(this Wiring wiring, Fault fault) => fault switch
    {
        Fault.Open f => Edit(wiring, l => l.IsWire && Names.Same(l.Owner, f.Wire), l => l with { Curve = new Open() }),
        Fault.Moved f => Edit(wiring, l => l.IsWire && Names.Same(l.Owner, f.Wire), l => Moved(l, wiring.NodeOf(f.End), wiring.NodeOf(f.To))),
        Fault.Swapped f => Edit(wiring, l => l.IsWire, l => Exchanged(l, wiring.NodeOf(f.A), wiring.NodeOf(f.B))),
        Fault.Lost f => Lost(wiring, f.Ground),
        Fault.Shorted f => Touching(wiring, wiring.NodeOf(f.A), wiring.NodeOf(f.B)),
        Fault.Dead f => Dead(wiring, f.Part),
        Fault.Reversed f => Reversed(wiring, f.Part),
        _ => throw new InvalidOperationException("a fault of no known form"),
    };

    private static Wiring Edit(Wiring wiring, Func<Link, bool> where, Func<Link, Link> change) =>
        wiring with { Links = [.. wiring.Links.Select(l => where(l) ? change(l) : l)] };

    private static Link Moved(Link link, int? end, int? to) =>
        end is null || to is not { } node ? link : link.From == end ? link with { From = node } : link.To == end ? link with { To = node } : link;

    private static Link Exchanged(Link link, int? a, int? b) =>
        a is { } one && b is { } other ? link with { From = Exchanged(link.From, one, other), To = Exchanged(link.To, one, other) } : link;

    private static int Exchanged(int node, int a, int b) => node == a ? b : node == b ? a : node;

    private static Wiring Lost(Wiring wiring, string ground)
    {
        var leads = GroundLeads.Of(wiring, ground);
        return Edit(wiring, l => l.IsWire && leads.Contains(l.Owner, Names.Comparer), l => l with { Curve = new Open() });
    }

    private static Wiring Touching(Wiring wiring, int? a, int? b) =>
        a is { } from && b is { } to ? wiring with { Links = wiring.Links.Add(new Link("", "", from, to, new Ohms(Patch.TouchOhms))) } : wiring;

    private static Wiring Dead(Wiring wiring, string part) =>
        Edit(wiring, l => l is { IsWire: false, IsJoint: false } && Names.Same(l.Owner, part), l => l with { Curve = Ohms.OpenContact, Switching = null, Cold = null }) with
        {
            Boxes = [.. wiring.Boxes.Select(b => Names.Same(b.Part, part) ? b.Dead() : b)],
        };

    private static Wiring Reversed(Wiring wiring, string part)
    {
        if (wiring.Parts.FirstOrDefault(p => Names.Same(p.Name, part)) is not { Model.Polarity: { } poles } place
            || wiring.NodeOf(new TerminalRef(place.Name, poles.Plus)) is not { } plus
            || wiring.NodeOf(new TerminalRef(place.Name, poles.Minus)) is not { } minus)
        {
            return wiring;
        }

        return Edit(wiring, l => l is { IsWire: false, IsJoint: false } && Names.Same(l.Owner, part), l => Exchanged(l, plus, minus)) with
        {
            Boxes = [.. wiring.Boxes.Select(b => Names.Same(b.Part, part)
                ? b with { SupplyNode = Exchanged(b.SupplyNode, plus, minus), GroundNode = Exchanged(b.GroundNode, plus, minus) }
                : b)],
        };
    }
}
