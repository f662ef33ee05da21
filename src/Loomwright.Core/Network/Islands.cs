using Loomwright.Parts;

namespace Loomwright.Network;

/// <summary>Which nodes hang together by anything that conducts, and with it which have no path at all to the reference.</summary>
internal sealed class Islands(Circuit circuit)
{
    private readonly int[] _root = new int[circuit.NodeCount];

    /// <summary>Whether any node has no path to the reference.</summary>
    public bool Any { get; private set; }

    /// <summary>The lowest-numbered node of a node's part; 0 for all that reach the reference.</summary>
    public int this[int node] => _root[node];

    /// <summary>Finds the parts anew.</summary>
    public void Find(Curve[] curves)
    {
        for (var n = 0; n < _root.Length; n++)
        {
            _root[n] = n;
        }

        for (var b = 0; b < curves.Length; b++)
        {
            if (curves[b].Straight is not { Siemens: 0 })
            {
                var from = Root(circuit.Branches[b].From);
                var to = Root(circuit.Branches[b].To);
                _root[Math.Max(from, to)] = Math.Min(from, to);
            }
        }

        Any = false;
        for (var n = 0; n < _root.Length; n++)
        {
            _root[n] = Root(n);
            Any |= _root[n] != 0;
        }
    }

    /// <summary>Whether this branch is an ideal current source between two parts, where its current has no way back.</summary>
    public bool Strands(int branch, Curve curve) =>
        curve is FixedCurrent { Amps: not 0 } && _root[circuit.Branches[branch].From] != _root[circuit.Branches[branch].To];

    private int Root(int node)
    {
        while (_root[node] != node)
        {
            _root[node] = _root[_root[node]];
            node = _root[node];
        }

        return node;
    }
}
