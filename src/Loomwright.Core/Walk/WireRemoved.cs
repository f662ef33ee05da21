using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Walk;

/// <summary>What a walk notices when one wire is left out: its first surprise, or why it notices nothing.</summary>
/// <param name="Wire">The wire's name.</param>
/// <param name="Surprise">The one with the fewest operations; null when every position shows what was promised.</param>
/// <param name="Reason">Why nothing is noticed: the wire is doubled, capped, spare, or feeds nothing that can be told; null when a surprise is, or when none of these explains it.</param>
/// <param name="End">How the walk ended; without a surprise only a whole walk says that the wire has no effect.</param>
public sealed record WireRemoved(string Wire, Surprise? Surprise, string? Reason, WalkEnd End)
{
    internal static WireRemoved Of(Loom loom, Wire wire, WalkOptions options)
    {
        var walked = Walker.Walk(
            Patch.Apply(loom, new Fault.Open(wire.Name)),
            options with { Healthy = loom, StopAtFirstSurprise = true });
        var surprise = walked.Surprises.FirstOrDefault();
        return new WireRemoved(wire.Name, surprise, surprise is null ? ReasonFor(loom, wire) : null, walked.End);
    }

    private static string? ReasonFor(Loom loom, Wire wire)
    {
        var wiring = Wiring.Of(loom);
        TerminalRef[] ends = [wire.From, wire.To];
        return Reached(wiring, wire, wire.From, static l => l.IsWire).Contains(NodeOf(wiring, wire.To)) ? $"doubled: other wires join {wire.From} and {wire.To}"
            : Reached(wiring, wire, wire.From, static l => l.IsWire || l.IsJoint).Contains(NodeOf(wiring, wire.To)) ? $"doubled: metal on metal joins {wire.From} and {wire.To} as well"
            : ends.Select(e => Capped(loom, e)).FirstOrDefault(c => c is not null) is { } capped ? capped
            : ends.Select(e => Beyond(wiring, wire, e)).FirstOrDefault(b => b is not null);
    }

    private static string? Capped(Loom loom, TerminalRef end) =>
        loom.Part(end.Part)?.Settings.Words("unused").Contains(end.Terminal, Names.Comparer) == true ? $"capped: {end} is not used" : null;

    // What the wire alone joins to the rest: nothing, or only parts that nobody can tell the work of.
    private static string? Beyond(Wiring wiring, Wire wire, TerminalRef end)
    {
        var there = Reached(wiring, wire, end, static l => l.IsWire || l.IsJoint || l.Fuse is not null);
        var parts = wiring.Links
            .Where(l => !l.IsWire && !l.IsJoint && l.Fuse is null && (there.Contains(l.From) || there.Contains(l.To)))
            .Select(l => l.Owner)
            .Distinct(Names.Comparer)
            .ToList();
        return parts.Count == 0 ? $"spare: nothing else is at {end}"
            : parts.All(p => Untold(wiring, p)) ? $"nothing on the bike shows what {string.Join(" and ", parts)} does"
            : null;
    }

    private static HashSet<int> Reached(Wiring wiring, Wire without, TerminalRef from, Func<Link, bool> passes)
    {
        var reached = new HashSet<int> { NodeOf(wiring, from) };
        var links = wiring.Links.Where(l => passes(l) && !(l.IsWire && Names.Same(l.Owner, without.Name))).ToList();
        while (links.RemoveAll(l => (reached.Contains(l.From) && reached.Add(l.To)) | (reached.Contains(l.To) && reached.Add(l.From))) > 0)
        {
        }

        return reached;
    }

    private static int NodeOf(Wiring wiring, TerminalRef terminal) => wiring.NodeOf(terminal) ?? -1;

    // Nothing of it is seen, heard, operated, or told by what else it moves; charging is not seen either.
    private static bool Untold(Wiring wiring, string part) =>
        wiring.Parts.FirstOrDefault(p => Names.Same(p.Name, part))?.Model is { Sights.IsEmpty: true, Relays.IsEmpty: true, Flashers.IsEmpty: true, Controller: null, Supply: null } model
        && (!model.Charging.IsEmpty || model.Elements.All(e => e.Gate is null && e.Curve is not Diode));
}
