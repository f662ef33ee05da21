using System.Collections.Immutable;
using Loomwright.Parts;

namespace Loomwright.Network;

/// <summary>One element between two nodes; its current is positive from → to through it.</summary>
public readonly record struct Branch(int From, int To, Curve Curve);

/// <summary>
/// What is joined to what: nodes by number, node 0 the reference at 0 V, branches by their place in the list.
/// </summary>
public sealed record Circuit
{
    /// <summary>Throws when a branch names a node that is not there.</summary>
    public Circuit(int nodeCount, ImmutableArray<Branch> branches)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(nodeCount, 1);
        for (var b = 0; b < branches.Length; b++)
        {
            if ((uint)branches[b].From >= (uint)nodeCount || (uint)branches[b].To >= (uint)nodeCount)
            {
                throw new ArgumentException(FormattableString.Invariant($"branch {b} ends at a node that is not there"), nameof(branches));
            }
        }

        NodeCount = nodeCount;
        Branches = branches;
    }

    /// <summary>Nodes, the reference included.</summary>
    public int NodeCount { get; }

    /// <summary>The elements.</summary>
    public ImmutableArray<Branch> Branches { get; }
}
