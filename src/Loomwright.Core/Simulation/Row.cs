using System.Collections.Immutable;

namespace Loomwright.Simulation;

/// <summary>A row of values that is itself a value: equal when every place is.</summary>
internal readonly struct Row<T>(ImmutableArray<T> items) : IEquatable<Row<T>>
    where T : IEquatable<T>
{
    private readonly ImmutableArray<T> _items = items;

    public int Length => _items.Length;

    public T this[int place] => _items[place];

    /// <summary>The same row with one place changed; itself when nothing changes.</summary>
    public Row<T> With(int place, T value) => _items[place].Equals(value) ? this : new(_items.SetItem(place, value));

    public ReadOnlySpan<T> AsSpan() => _items.AsSpan();

    public bool Equals(Row<T> other) => _items == other._items || AsSpan().SequenceEqual(other.AsSpan());

    public override bool Equals(object? obj) => obj is Row<T> other && Equals(other);

    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var item in AsSpan())
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    public static bool operator ==(Row<T> a, Row<T> b) => a.Equals(b);

    public static bool operator !=(Row<T> a, Row<T> b) => !a.Equals(b);
}

/// <summary>Makes rows.</summary>
internal static class Row
{
    /// <summary>The same value in every place.</summary>
    public static Row<T> Of<T>(int length, T value)
        where T : IEquatable<T> => new([.. Enumerable.Repeat(value, length)]);
}
