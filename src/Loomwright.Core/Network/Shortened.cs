using System.Collections.Immutable;
using Loomwright.Parts;

namespace Loomwright.Network;

/// <summary>
/// A circuit with fewer nodes for the same answer: two resistances in a row with nothing asked about between them are
/// one, and one that leads nowhere is none. Where a part may hang on nothing at all everything is left as it is: at
/// which of its nodes such a part rests is a matter of its numbers.
/// </summary>
internal sealed class Shortened
{
    private readonly List<Branch?> _branches;
    private readonly List<int>[] _at;
    private readonly bool[] _keptNodes;
    private readonly bool[] _keptBranches;

    /// <param name="circuit">The whole.</param>
    /// <param name="nodes">Nodes whose potential is asked for.</param>
    /// <param name="branches">Branches whose current is asked for or whose curve changes.</param>
    public Shortened(Circuit circuit, IEnumerable<int> nodes, IEnumerable<int> branches)
    {
        _branches = [.. circuit.Branches.Select(b => (Branch?)b)];
        _keptNodes = new bool[circuit.NodeCount];
        _keptBranches = new bool[_branches.Count];
        _keptNodes[0] = true;
        foreach (var node in nodes)
        {
            _keptNodes[node] = true;
        }

        foreach (var branch in branches)
        {
            _keptBranches[branch] = true;
        }

        _at = [.. Enumerable.Range(0, circuit.NodeCount).Select(_ => new List<int>())];
        for (var b = 0; b < _branches.Count; b++)
        {
            _at[circuit.Branches[b].From].Add(b);
            _at[circuit.Branches[b].To].Add(b);
        }

        var whole = new Islands(circuit);
        whole.Find([.. circuit.Branches.Select(b => b.Curve)]);
        if (!whole.Any)
        {
            TakeOutAll();
        }

        NodeOf = Places(Enumerable.Range(0, circuit.NodeCount).Select(n => _keptNodes[n] || _at[n].Count > 0));
        BranchOf = Places(_branches.Select(b => b is not null));
        Circuit = new Circuit(NodeOf.Max() + 1, [.. _branches.OfType<Branch>().Select(b => new Branch(NodeOf[b.From], NodeOf[b.To], b.Curve))]);
    }

    /// <summary>What is left.</summary>
    public Circuit Circuit { get; }

    /// <summary>The number of each node in what is left; −1 for one taken out.</summary>
    public int[] NodeOf { get; }

    /// <summary>The place of each branch in what is left; −1 for one taken out.</summary>
    public int[] BranchOf { get; }

    // Taking one out can leave another with nothing asked about.
    private void TakeOutAll()
    {
        bool again;
        do
        {
            again = false;
            for (var node = 0; node < _at.Length; node++)
            {
                again |= TakeOut(node);
            }
        }
        while (again);
    }

    private bool TakeOut(int node)
    {
        var ends = _at[node];
        if (_keptNodes[node] || ends.Count is 0 or > 2 || ends.Exists(b => _keptBranches[b] || _branches[b]!.Value.Curve is not Ohms))
        {
            return false;
        }

        var (first, last) = (ends[0], ends[^1]);
        var (from, to) = (Other(first, node), Other(last, node));
        var ohms = ends.Sum(b => ((Ohms)_branches[b]!.Value.Curve).ResistanceOhms);
        _at[from].Remove(first);
        _at[to].Remove(last);
        _branches[last] = null;
        ends.Clear();
        if (from == to)
        {
            _branches[first] = null;
            return true;
        }

        _branches[first] = new Branch(from, to, new Ohms(ohms));
        _at[from].Add(first);
        _at[to].Add(first);
        return true;
    }

    private int Other(int branch, int node) => _branches[branch]!.Value is var b && b.From == node ? b.To : b.From;

    private static int[] Places(IEnumerable<bool> left)
    {
        var next = 0;
        return [.. left.Select(l => l ? next++ : -1)];
    }
}
