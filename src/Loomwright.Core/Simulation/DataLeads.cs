using Loomwright.Parts;

namespace Loomwright.Simulation;

/// <summary>
/// Which button blocks a controller hears. What is said over a data lead or a bus is not simulated: the block is heard
/// or not. Heard it is while it is fed and wires join its data terminals to the controller's; a single lead must not lie at ground.
/// </summary>
internal sealed class DataLeads
{
    // Below this share of the box's supply a lead that its pull-up should hold there lies at ground (judgement).
    private const double LiesAtGroundShare = 0.25;

    private readonly Wiring _wiring;
    private readonly int[][] _heardBy;

    public DataLeads(Wiring wiring)
    {
        _wiring = wiring;
        _heardBy = [.. wiring.Boxes.Select(box => Enumerable.Range(0, wiring.Blocks.Length).Where(b => box.Data.First >= 0 && Hears(box, wiring.Blocks[b])).ToArray())];
    }

    /// <summary>Whether the boxes of two wirings hear the same blocks.</summary>
    public static bool HearAlike(Wiring one, Wiring other) =>
        one.Blocks.IsEmpty || new DataLeads(one)._heardBy.Zip(new DataLeads(other)._heardBy, (a, b) => a.AsSpan().SequenceEqual(b)).All(same => same);

    /// <summary>Whether any block the box hears tells of that button being pressed.</summary>
    public bool Pressed(int box, int number, State state, double[] volts)
    {
        var place = _wiring.Boxes[box];
        if (place.Data.Second < 0 && volts[place.Data.First] - volts[place.GroundNode] < LiesAtGroundShare * Reading.SupplyVolts(place, volts))
        {
            return false;
        }

        foreach (var b in _heardBy[box])
        {
            var block = _wiring.Blocks[b];
            if (state.Relays[block.Electronics] && number <= block.Buttons.Length && block.Buttons[number - 1] is >= 0 and var control && state.Positions[control] > 0)
            {
                return true;
            }
        }

        return false;
    }

    private bool Hears(Box box, BlockPlace block) =>
        (box.Data.Second < 0) == (block.Second < 0) && Joined(box.Data.First, block.Data) && (block.Second < 0 || Joined(box.Data.Second, block.Second));

    private bool Joined(int from, int to)
    {
        var reached = new HashSet<int> { from };
        var todo = new Queue<int>([from]);
        while (todo.TryDequeue(out var node))
        {
            foreach (var link in _wiring.Links.Where(l => IsLead(l) && (l.From == node || l.To == node)))
            {
                if (reached.Add(link.From == node ? link.To : link.From))
                {
                    todo.Enqueue(link.From == node ? link.To : link.From);
                }
            }
        }

        return reached.Contains(to);
    }

    // Wires, and what joins like one inside a connector; never anything that switches or carries a load.
    private static bool IsLead(Link link) => link is { Curve: Ohms { ResistanceOhms: < 100 }, Switching: null, Fuse: null };
}
