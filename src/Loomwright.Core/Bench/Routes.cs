using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Ways through the bike at one moment: contacts, relays and flashers as they stand in it.</summary>
internal sealed class Routes
{
    private readonly Paths _paths;
    private readonly Dictionary<string, string> _positions;
    private readonly Dictionary<string, bool> _pulledIn;

    public Routes(Paths paths, Frame at)
    {
        _paths = paths;
        _positions = at.Controls.ToDictionary(c => c.Control, c => c.Position, Names.Comparer);
        _pulledIn = at.Relays.ToDictionary(r => r.Part, r => r.PulledIn, Names.Comparer);
    }

    /// <summary>From a terminal to the nearest end that is wanted, in the order met; through other loads only where there is no way without. Null when there is no way.</summary>
    public ImmutableArray<Tie>? Way(TerminalRef start, Func<TerminalRef, bool> isEnd, Tie? without = null) =>
        _paths.Way(start, isEnd, t => t != without && IsClosed(t))
        ?? _paths.Way(start, isEnd, t => t != without && (IsClosed(t) || (t.Via == Via.Load && t.Part is { } part && _paths.Models[part.Name].Controller is null)));

    /// <summary>The way to a load from what feeds it, the supply or a box's output, and its way back; null when it has not both.</summary>
    public (ImmutableArray<Tie> Feed, ImmutableArray<Tie> Back)? Through(Tie load)
    {
        foreach (var (a, b) in new[] { (load.A, load.B), (load.B, load.A) })
        {
            if (Way(a, t => t.Equals(_paths.Feed) || IsOutput(t), load) is { } feed && Way(b, t => t.Equals(_paths.Return), load) is { } back)
            {
                return (feed, back);
            }
        }

        return null;
    }

    /// <summary>Whether a box switches something on there.</summary>
    public bool IsOutput(TerminalRef at) => _paths.Models.GetValueOrDefault(at.Part)?.Controller is { } box && box.Outputs.Any(o => Names.Same(o.Terminal, at.Terminal));

    /// <summary>Whether a tie conducts at that moment; outputs and loads do not.</summary>
    public bool IsClosed(Tie tie) => tie.Via is Via.Wire or Via.Joint or Via.Fuse or Via.Diode || (tie.Via is Via.Contact or Via.Relay && Levers.Gates(tie).All(g => IsClosed(tie.Part!, g)));

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

    // Electronics that make no click are alive wherever something is seen to work through them.
    private bool IsClosed(Part part, Gate gate) => gate switch
    {
        Gate.ByControl g => _positions.TryGetValue(g.Control, out var at) && g.ClosedIn.Any(p => Names.Same(p, at)),
        Gate.ByRelay g => _pulledIn.GetValueOrDefault(part.Name, true) == g.WhenPulledIn,
        Gate.ByFlasher => true,
        _ => false,
    };
}
