using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Bench;

/// <summary>One thing to show on the bench: a box that wakes, or loads that come on together.</summary>
/// <param name="Name">In the owner's words: the function, else the output, else the load.</param>
/// <param name="Loads">Names as in <see cref="Frame.Seen"/>; empty for a box or a feed alone.</param>
/// <param name="Do">Operations from rest that bring it on, in order.</param>
/// <param name="Reach">What must be connected for it.</param>
/// <param name="News">What is new in it, each a kind of part or of behaviour, in words.</param>
internal sealed record Line(string Name, ImmutableArray<string> Loads, ImmutableArray<Operation.Set> Do, Reach Reach, ImmutableArray<string> News)
{
    /// <summary>The load controller it belongs to, or null.</summary>
    public string? Box { get; init; }

    /// <summary>The box's output that feeds it, or null.</summary>
    public TerminalRef? Output { get; init; }

    /// <summary>Other ways to bring the same on, each from rest: the second brake, the clutch in place of neutral.</summary>
    public ImmutableArray<ImmutableArray<Operation.Set>> Also { get; init; } = [];

    /// <summary>What ends it while it is on, beside undoing what brought it on: the kill switch.</summary>
    public ImmutableArray<Operation.Set> Ends { get; init; } = [];

    /// <summary>Whether it turns the engine over: its cable goes on last.</summary>
    public bool Cranks { get; init; }

    /// <summary>Whether it brings on a load of a part.</summary>
    public bool IsOf(string part) => Loads.Any(l => Text.Names.Same(l, part) || l.StartsWith(part + ".", StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether a load does what it is for.</summary>
    public static bool IsOn(Seen seen) => seen.Symbol is not (Symbol.Dark or Symbol.Silent or Symbol.Rests);

    /// <summary>Where a feed without a load ends, to be measured; null for all other lines.</summary>
    public TerminalRef? End { get; init; }
}

/// <summary>Parts and wires in the order to be connected: feed, way back, then what operates it.</summary>
internal sealed record Reach(ImmutableArray<string> Parts, ImmutableArray<string> Wires)
{
    public static Reach None { get; } = new([], []);

    public Reach With(Reach other) => new([.. Parts.Union(other.Parts, Text.Names.Comparer)], [.. Wires.Union(other.Wires, Text.Names.Comparer)]);
}
