using System.Collections.Immutable;

namespace Loomwright.Expressions;

/// <summary>What an <see cref="Evaluator"/> remembers between two steps. An immutable value: two equal memories behave alike from here on.</summary>
public sealed class Memory : IEquatable<Memory>
{
    private readonly int _hash;

    internal Memory(ImmutableArray<Cell> cells)
    {
        Cells = cells;
        var hash = default(HashCode);
        foreach (var cell in cells)
        {
            hash.Add(cell);
            Runs |= cell.Left is not null;
        }

        _hash = hash.ToHashCode();
    }

    /// <summary>Nothing seen yet: supply just connected, or after a reset. The first step takes what it sees as having always been so.</summary>
    public static Memory Fresh { get; } = new([]);

    internal ImmutableArray<Cell> Cells { get; }

    /// <summary>Whether any timer runs.</summary>
    internal bool Runs { get; }

    public bool Equals(Memory? other) => other is not null && _hash == other._hash && Cells.AsSpan().SequenceEqual(other.Cells.AsSpan());

    public override bool Equals(object? obj) => Equals(obj as Memory);

    public override int GetHashCode() => _hash;
}

/// <summary>The memory of one term.</summary>
/// <param name="Was">Whether the term was active at the last step.</param>
/// <param name="Set">Latched, or its time has been reached.</param>
/// <param name="Left">Until its timer runs out; null when none runs.</param>
internal readonly record struct Cell(bool Was, bool Set, TimeSpan? Left);

/// <summary>A timer that runs.</summary>
/// <param name="Root">Place of the condition it stands in.</param>
/// <param name="Whole">The time it was started with.</param>
/// <param name="Left">What is left of it.</param>
internal readonly record struct Running(int Root, TimeSpan Whole, TimeSpan Left);

/// <summary>What a cell belongs to; decides what sleep leaves of it.</summary>
internal enum CellUse
{
    Latch,
    Ender,
    Press,
    Stretch,
}
