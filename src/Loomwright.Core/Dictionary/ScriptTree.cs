using System.Collections.Immutable;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Dictionary;

/// <summary>The operations of all stimuli, what begins alike only once. A parent stands before its children; the first node is power-on.</summary>
internal sealed class ScriptTree
{
    /// <summary>One more thing done.</summary>
    /// <param name="Parent">Place of what was done before; −1 for power-on.</param>
    /// <param name="Control">Place of the control moved, or −1.</param>
    /// <param name="Position">Where to.</param>
    /// <param name="Wait">The time let pass, when no control is moved.</param>
    public readonly record struct Node(int Parent, int Control, int Position, TimeSpan Wait);

    private readonly List<Node> _nodes = [new Node(-1, -1, 0, TimeSpan.Zero)];

    public ScriptTree(Wiring wiring, ImmutableArray<Stimulus> stimuli) =>
        Ends = [.. stimuli.Select(s => s.Operations.SelectMany(o => Steps(wiring, o)).Aggregate(0, Child))];

    public IReadOnlyList<Node> Nodes => _nodes;

    /// <summary>The node at which each stimulus ends.</summary>
    public ImmutableArray<int> Ends { get; }

    private int Child(int parent, Node step)
    {
        step = step with { Parent = parent };
        var known = _nodes.IndexOf(step);
        if (known >= 0)
        {
            return known;
        }

        _nodes.Add(step);
        return _nodes.Count - 1;
    }

    // What cannot be done here (a control that is not connected) changes nothing.
    private static IEnumerable<Node> Steps(Wiring wiring, Operation operation)
    {
        switch (operation)
        {
            case Operation.Set set when Find(wiring, set.Control) is { } c && Wiring.PlaceOf(wiring.Controls[c], set.Position) is { } place:
                yield return new Node(0, c, place, TimeSpan.Zero);
                break;
            case Operation.Tap tap when Find(wiring, tap.Control) is { } c && wiring.Controls[c] is { Momentary: true } control:
                yield return new Node(0, c, control.Positions.IndexOf(control.Positions.First(p => !Names.Same(p, control.Rest))), TimeSpan.Zero);
                yield return new Node(0, c, Wiring.PlaceOf(control, control.Rest) ?? 0, TimeSpan.Zero);
                break;
            case Operation.Wait { Time.Ticks: >= 0 } wait:
                yield return new Node(0, -1, 0, wait.Time);
                break;
        }
    }

    private static int? Find(Wiring wiring, string control)
    {
        for (var c = 0; c < wiring.Controls.Length; c++)
        {
            if (Names.Same(wiring.Controls[c].Name, control))
            {
                return c;
            }
        }

        return null;
    }
}
