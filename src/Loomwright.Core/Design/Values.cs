using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.Design;

/// <summary>One setting of a part as the owner wrote it, already read: a number in SI units, a word, or a structure of those.</summary>
public abstract record Value
{
    private Value()
    {
    }

    /// <summary>A quantity in SI units (volts, amps, ohms, watts, metres, seconds), mm², °C, Ah or a share 0…1, as its parameter says.</summary>
    public sealed record Number(double Si) : Value;

    /// <summary>Raw text: a choice, a terminal, a condition, a note.</summary>
    public sealed record Word(string Text) : Value;

    /// <summary>Names in the owner's order.</summary>
    public sealed record Words(ImmutableArray<string> Names) : Value
    {
        public bool Equals(Words? other) => other is not null && Names.SequenceEqual(other.Names);

        public override int GetHashCode() => Names.Length;
    }

    /// <summary>Pairs of names that are joined, as in a contact table.</summary>
    public sealed record Pairs(ImmutableArray<(string A, string B)> Joined) : Value
    {
        public bool Equals(Pairs? other) => other is not null && Joined.SequenceEqual(other.Joined);

        public override int GetHashCode() => Joined.Length;
    }

    /// <summary>Settings under the owner's own names, in file order: outputs, inputs, positions, lights.</summary>
    public sealed record Group(Settings Entries) : Value;
}

/// <summary>A part's settings by key, in file order. Keys and names are matched by <see cref="Names.Fold"/>.</summary>
public sealed record Settings(ImmutableArray<KeyValuePair<string, Value>> Entries)
{
    public static readonly Settings None = new(ImmutableArray<KeyValuePair<string, Value>>.Empty);

    /// <summary>The value under a key, or null when it was not given.</summary>
    public Value? this[string key]
    {
        get
        {
            foreach (var (name, value) in Entries)
            {
                if (Names.Same(name, key))
                {
                    return value;
                }
            }

            return null;
        }
    }

    /// <summary>The number under a key in SI units, or null.</summary>
    public double? Number(string key) => this[key] is Value.Number n ? n.Si : null;

    /// <summary>The word under a key, or null.</summary>
    public string? Word(string key) => this[key] is Value.Word w ? w.Text : null;

    /// <summary>The names under a key; empty when not given.</summary>
    public ImmutableArray<string> Words(string key) => this[key] is Value.Words w ? w.Names : ImmutableArray<string>.Empty;

    /// <summary>The settings grouped under a key; empty when not given.</summary>
    public Settings Group(string key) => this[key] is Value.Group g ? g.Entries : None;

    /// <summary>The same settings with one more, or one replaced.</summary>
    public Settings With(string key, Value value)
    {
        var kept = Entries.Where(e => !Names.Same(e.Key, key));
        return new Settings([.. kept, KeyValuePair.Create(key, value)]);
    }

    public bool Equals(Settings? other) => other is not null && Entries.SequenceEqual(other.Entries);

    public override int GetHashCode() => Entries.Length;
}
