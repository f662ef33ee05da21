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
        var nets = Nets.Without(wiring, wire.Name);
        TerminalRef[] ends = [wire.From, wire.To];
        return nets.Joins(wire.From, wire.To) ? $"doubled: other wires join {wire.From} and {wire.To}"
            : ends.Select(e => Capped(loom, e)).FirstOrDefault(c => c is not null) is { } capped ? capped
            : ends.Where(e => Spare(wiring, nets, e)).Select(e => $"spare: nothing else is at {e}").FirstOrDefault()
                ?? ends.Where(e => Untold(wiring, e)).Select(e => $"nobody can tell what {e.Part} does").FirstOrDefault();
    }

    private static string? Capped(Loom loom, TerminalRef end) =>
        loom.Part(end.Part)?.Settings.Words("unused").Contains(end.Terminal, Names.Comparer) == true ? $"capped: {end} is not used" : null;

    // Wires alone lead from there to no element of any part.
    private static bool Spare(Wiring wiring, Nets nets, TerminalRef end) =>
        wiring.NodeOf(end) is { } node && !wiring.Links.Any(l => !l.IsWire && (nets.Joins(l.From, node) || nets.Joins(l.To, node)));

    // A load that nothing of it is seen, heard or told by what else it moves.
    private static bool Untold(Wiring wiring, TerminalRef end) =>
        wiring.Parts.FirstOrDefault(p => Names.Same(p.Name, end.Part))?.Model is
        {
            Elements.IsEmpty: false, Sights.IsEmpty: true, Controls.IsEmpty: true, Relays.IsEmpty: true, Flashers.IsEmpty: true, Protectors.IsEmpty: true, Controller: null, Supply: null
        } model && model.Elements.All(e => e.Gate is null && e.Curve is not Diode);
}
