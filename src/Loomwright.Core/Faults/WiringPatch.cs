using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Faults;

/// <summary>The same faults as edits of links that are already compiled: the law is that both ways give one circuit.</summary>
internal static class WiringPatch
{
    /// <summary>The wiring with that fault in it; places and nodes stay as they are. A setting is compiled anew from the design, so of several it comes first.</summary>
    public static Wiring With(this Wiring wiring, Fault fault) => fault switch
    {
        Fault.Open f => Edit(wiring, l => l.IsWire && Names.Same(l.Owner, f.Wire), l => l with { Curve = new Open() }),
        Fault.Moved f => Edit(wiring, l => l.IsWire && Names.Same(l.Owner, f.Wire), l => Moved(l, wiring.NodeOf(f.End), wiring.NodeOf(f.To))),
        Fault.Swapped f => Edit(wiring, l => l.IsWire, l => Exchanged(l, wiring.NodeOf(f.A), wiring.NodeOf(f.B))),
        Fault.Lost f => Lost(wiring, f.Ground),
        Fault.Shorted f => Touching(wiring, wiring.NodeOf(f.A), wiring.NodeOf(f.B)),
        Fault.Dead { Inside: { } inside } f => Dead(wiring, f.Part, inside),
        Fault.Dead f => Dead(wiring, f.Part),
        Fault.Reversed f => Reversed(wiring, f.Part),
        Fault.High f => High(wiring, f),
        Fault.Stuck f => Moving.Find(wiring.Loom, f.Switch, f.At) is { } moving ? Stuck(wiring, moving.Part, moving.Control, f.At) : wiring,
        Fault.Leak f => Edit(wiring, l => IsContact(l) && Names.Same(l.Owner, f.Part), l => l with { Off = new Ohms(f.Ohms) }),
        Fault.Setting => Wiring.Of(Patch.Apply(wiring.Loom, fault)),
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
        return Edit(wiring, leads.IsEmpty ? l => l.IsJoint && Names.Same(l.Owner, ground) : l => l.IsWire && leads.Contains(l.Owner, Names.Comparer), l => l with { Curve = new Open() });
    }

    private static Wiring High(Wiring wiring, Fault.High fault)
    {
        ImmutableArray<string> wires = wiring.Loom.Wire(fault.Joint) is { } wire ? [wire.Name] : GroundLeads.Of(wiring, fault.Joint);
        return wires.IsEmpty
            ? Edit(wiring, l => l is { IsJoint: true, Curve: Ohms } && Names.Same(l.Owner, fault.Joint), l => l with { Curve = new Ohms(fault.Ohms) })
            : Edit(wiring, l => l is { IsWire: true, Curve: Ohms } && wires.Contains(l.Owner, Names.Comparer), l => l with { Curve = new Ohms(((Ohms)l.Curve).ResistanceOhms + fault.Ohms) });
    }

    private static bool IsContact(Link link) => link is { Switching: Switching.Contact or Switching.Relay or Switching.Fixed, Curve: Ohms };

    private static Wiring Stuck(Wiring wiring, string part, string? control, string at) =>
        Edit(wiring, l => l.Switching is not null && Names.Same(l.Owner, part), l => l with { Switching = Stuck(wiring, l.Switching!, control, at) });

    private static Switching Stuck(Wiring wiring, Switching switching, string? control, string at) => switching switch
    {
        Switching.Contact c when control is not null && Names.Same(wiring.Controls[c.Control].Name, control) => new Switching.Fixed(Wiring.PlaceOf(wiring.Controls[c.Control], at) is { } place && c.Closed[place]),
        Switching.Relay r when control is null => new Switching.Fixed(r.WhenPulledIn == Names.Same(at, Relay.PulledIn)),
        Switching.Both b => new Switching.Both(Stuck(wiring, b.One, control, at), Stuck(wiring, b.Other, control, at)),
        _ => switching,
    };

    private static Wiring Touching(Wiring wiring, int? a, int? b) =>
        a is { } from && b is { } to ? wiring with { Links = wiring.Links.Add(new Link("", "", from, to, new Ohms(Patch.TouchOhms))) } : wiring;

    private static Wiring Dead(Wiring wiring, string part) =>
        Edit(wiring, l => l is { IsWire: false, IsJoint: false } && Names.Same(l.Owner, part), l => l with { Curve = Ohms.OpenContact, Switching = null, Cold = null }) with
        {
            Boxes = [.. wiring.Boxes.Select(b => Names.Same(b.Part, part) ? b.Dead() : b)],
        };

    private static Wiring Dead(Wiring wiring, string part, string inside) =>
        wiring.Parts.FirstOrDefault(p => Names.Same(p.Name, part))?.Model.ElementOf(inside) is { } element
            ? Edit(wiring, l => l is { IsWire: false, IsJoint: false } && Names.Same(l.Owner, part) && Names.Same(l.Name, element), l => l with { Curve = Ohms.OpenContact, Switching = null, Cold = null })
            : wiring;

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
