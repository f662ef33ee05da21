using System.Collections.Immutable;

namespace Loomwright.Network;

/// <summary>How a solve ended.</summary>
public abstract record Outcome
{
    private Outcome()
    {
    }

    /// <summary>Every node's current sum is within <see cref="Solver.ResidualAmps"/>.</summary>
    public sealed record Solved : Outcome
    {
        internal static readonly Solved Instance = new();
    }

    /// <summary>No answer exists: a loop of ideal voltage sources, or ideal current sources into nodes with no other way out.</summary>
    /// <param name="Branches">The branches that make it so, ascending.</param>
    public sealed record StructuralError(ImmutableArray<int> Branches) : Outcome;

    /// <summary>The solver gave up; expected never, counted always.</summary>
    public sealed record Unsolved : Outcome
    {
        internal static readonly Unsolved Instance = new();
    }
}
