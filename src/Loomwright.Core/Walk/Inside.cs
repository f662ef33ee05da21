using System.Collections.Immutable;
using Loomwright.Expressions;
using Loomwright.Simulation;

namespace Loomwright.Walk;

/// <summary>A state without its controls, and what the promises remember: all that a hand cannot see. A value.</summary>
internal sealed class Inside : IEquatable<Inside>
{
    /// <summary>In place of the positions, which stand in a <see cref="Setting"/>.</summary>
    public static readonly Row<int> NoPositions = new([]);

    private readonly int _hash;

    public Inside(State state, Row<Memory> promised)
    {
        State = state with { Positions = NoPositions };
        Promised = promised;
        _hash = HashCode.Combine(State, promised);
    }

    public State State { get; }

    public Row<Memory> Promised { get; }

    /// <summary>What can run out next; found once, by <see cref="Timers"/>.</summary>
    public ImmutableArray<RunOut>? RunOuts { get; set; }

    /// <summary>Whether any timer runs, of a box or of a promise.</summary>
    public bool Runs
    {
        get
        {
            foreach (var box in State.Boxes.AsSpan())
            {
                if (box.Memory.Runs)
                {
                    return true;
                }
            }

            foreach (var memory in Promised.AsSpan())
            {
                if (memory.Runs)
                {
                    return true;
                }
            }

            return false;
        }
    }

    public bool Equals(Inside? other) =>
        ReferenceEquals(this, other) || (other is not null && _hash == other._hash && Promised == other.Promised && State == other.State);

    public override bool Equals(object? obj) => Equals(obj as Inside);

    public override int GetHashCode() => _hash;
}
