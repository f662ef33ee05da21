using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Web.Try;

/// <summary>One frame as it is to be shown: with the loom it belongs to, the healthy bike in the same positions, and the chosen half of a flash.</summary>
/// <param name="Loom">The design as the file has it.</param>
/// <param name="Built">The same with the mistake in: what the frame was computed from.</param>
/// <param name="Now">What happens.</param>
/// <param name="Healthy">The same operations without the mistake; null when none is in.</param>
/// <param name="FlashOn">Whether the lit half of a flash is shown.</param>
public sealed record Shown(Loom Loom, Loom Built, Frame Now, Frame? Healthy, bool FlashOn)
{
    // Every row of every list asks; a bike has a hundred wires and two hundred terminals.
    private readonly Lazy<Dictionary<TerminalRef, PotentialSeen>> _volts = new(() => Half(Now, FlashOn)?.Potentials.ToDictionary(p => p.Terminal) ?? []);
    private readonly Lazy<Dictionary<string, WireSeen>> _amps = new(() => ByName(Half(Now, FlashOn)));
    private readonly Lazy<Dictionary<string, WireSeen>> _ampsBefore = new(() => ByName(Healthy is null ? null : Half(Healthy, FlashOn)));

    /// <summary>Something blinks, so that there are two electrical pictures.</summary>
    public bool Blinks => Now.Phases.Length > 1;

    /// <summary>The electrical picture shown; null when none was found.</summary>
    public Phase? Phase => Half(Now, FlashOn);

    /// <summary>The wire as it now sits: an end may be on another terminal; null when it is left out.</summary>
    public Wire? Sits(Wire wire) => Healthy is null ? wire : Built.Wire(wire.Name);

    /// <summary>Volts at a terminal, or null when unknown.</summary>
    public PotentialSeen? At(TerminalRef terminal) => _volts.Value.GetValueOrDefault(terminal);

    /// <summary>What a wire carries, or null when unknown.</summary>
    public WireSeen? Of(string wire) => _amps.Value.GetValueOrDefault(wire);

    /// <summary>What the wire carries in the healthy bike, or null.</summary>
    public WireSeen? Before(string wire) => _ampsBefore.Value.GetValueOrDefault(wire);

    /// <summary>The same sight in the healthy bike, or null when no mistake is in.</summary>
    public Seen? Before(Seen seen) => Healthy?.Seen.FirstOrDefault(s => Names.Same(s.Name, seen.Name));

    /// <summary>The same fuse in the healthy bike, or null.</summary>
    public FuseSeen? Before(FuseSeen fuse) => Healthy?.Fuses.FirstOrDefault(f => Names.Same(f.Part, fuse.Part));

    /// <summary>The same relay in the healthy bike, or null.</summary>
    public RelaySeen? Before(RelaySeen relay) => Healthy?.Relays.FirstOrDefault(r => Names.Same(r.Part, relay.Part));

    /// <summary>The same box in the healthy bike, or null.</summary>
    public ControllerSeen? Before(ControllerSeen box) => Healthy?.Controllers.FirstOrDefault(c => Names.Same(c.Part, box.Part));

    /// <summary>The owner's name for what sits at a terminal of a box (<c>stop lamp</c> at <c>X4</c>), or null.</summary>
    public string? NameAt(TerminalRef terminal)
    {
        var box = Now.Controllers.FirstOrDefault(c => Names.Same(c.Part, terminal.Part));
        return box is null ? null
            : box.Outputs.FirstOrDefault(o => Names.Same(o.Terminal, terminal.Terminal))?.Name
            ?? box.Inputs.FirstOrDefault(i => Names.Same(i.Terminal, terminal.Terminal))?.Name;
    }

    private static Phase? Half(Frame frame, bool flashOn) => frame.Phases.Length switch
    {
        0 => null,
        1 => frame.Phases[0],
        _ => frame.Phases[flashOn ? 0 : 1],
    };

    private static Dictionary<string, WireSeen> ByName(Phase? phase) => phase?.Wires.ToDictionary(w => w.Wire, Names.Comparer) ?? new(Names.Comparer);
}
