using Loomwright.Parts;

namespace Loomwright.Network;

/// <summary>
/// Nodes joined by ideal voltage sources: each group has one unknown, its first node's potential, and every other
/// node stands a fixed difference away. The groups are trees; a source that closes a loop is the structural error.
/// </summary>
internal sealed class Joints
{
    private readonly Circuit _circuit;
    private readonly int[] _parentBranch;

    /// <summary>Joined nodes with a parent, parents first.</summary>
    private readonly List<int> _joined = [];

    public Joints(Circuit circuit, Curve[] curves)
    {
        _circuit = circuit;
        _parentBranch = new int[circuit.NodeCount];
        Head = new int[circuit.NodeCount];
        Array.Fill(_parentBranch, -1);
        Array.Fill(Head, -1);
        if (!curves.Any(c => c is FixedVoltage))
        {
            Head = [.. Enumerable.Range(0, circuit.NodeCount)];
            LoopBranches = [];
            return;
        }

        var ties = Enumerable.Range(0, curves.Length).Where(b => curves[b] is FixedVoltage).ToList();
        var at = ties.SelectMany(b => new[] { (Node: circuit.Branches[b].From, b), (Node: circuit.Branches[b].To, b) }).ToLookup(e => e.Node, e => e.b);
        for (var n = 0; n < circuit.NodeCount; n++)
        {
            if (Head[n] < 0)
            {
                Grow(n, at);
            }
        }

        var loose = ties.Where(b => _parentBranch[circuit.Branches[b].From] != b && _parentBranch[circuit.Branches[b].To] != b);
        LoopBranches = [.. loose.SelectMany(Loop).Distinct().Order()];
    }

    /// <summary>For each node the first node of its group; itself when nothing joins it.</summary>
    public int[] Head { get; }

    /// <summary>Whether any nodes are joined.</summary>
    public bool Any => _joined.Count > 0;

    /// <summary>The ideal voltage sources that form loops, empty when there are none.</summary>
    public int[] LoopBranches { get; }

    /// <summary>Writes each node's potential above its group's first node.</summary>
    public void Offsets(Curve[] curves, Span<double> offsetVolts)
    {
        offsetVolts.Clear();
        foreach (var node in _joined)
        {
            var tie = _circuit.Branches[_parentBranch[node]];
            var volts = ((FixedVoltage)curves[_parentBranch[node]]).Volts;
            offsetVolts[node] = tie.From == node ? offsetVolts[tie.To] + volts : offsetVolts[tie.From] - volts;
        }
    }

    /// <summary>Gives each ideal voltage source the current its outer node still needs, the outermost first.</summary>
    public void Currents(CurrentSums sums, Span<double> amps)
    {
        for (var k = _joined.Count - 1; k >= 0; k--)
        {
            var node = _joined[k];
            var b = _parentBranch[node];
            var tie = _circuit.Branches[b];
            amps[b] = tie.From == node ? -sums[node] : sums[node];
            sums.Leave(tie.From, amps[b]);
            sums.Leave(tie.To, -amps[b]);
        }
    }

    private void Grow(int head, ILookup<int, int> at)
    {
        Head[head] = head;
        var queue = new Queue<int>([head]);
        while (queue.TryDequeue(out var node))
        {
            foreach (var b in at[node])
            {
                var other = _circuit.Branches[b].From == node ? _circuit.Branches[b].To : _circuit.Branches[b].From;
                if (Head[other] < 0)
                {
                    Head[other] = head;
                    _parentBranch[other] = b;
                    _joined.Add(other);
                    queue.Enqueue(other);
                }
            }
        }
    }

    private IEnumerable<int> Loop(int closing)
    {
        var up = Way(_circuit.Branches[closing].From);
        var down = Way(_circuit.Branches[closing].To);
        return up.Except(down).Concat(down.Except(up)).Append(closing);
    }

    private List<int> Way(int node)
    {
        var way = new List<int>();
        while (_parentBranch[node] >= 0)
        {
            way.Add(_parentBranch[node]);
            var tie = _circuit.Branches[_parentBranch[node]];
            node = tie.From == node ? tie.To : tie.From;
        }

        return way;
    }
}
