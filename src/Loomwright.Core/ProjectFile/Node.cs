using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>A piece of the file's tree with the exact stretch of text it stands on. Words are what was written: <c>off</c>, <c>30</c> and <c>1e3</c> are text.</summary>
public abstract record Node
{
    private Node(Span span) => Span = span;

    /// <summary>The characters it stands on, quotes and brackets included; a value left empty is an empty stretch just after its colon.</summary>
    public Span Span { get; init; }

    /// <summary>A word to be written by an edit; it has no place yet.</summary>
    public static Scalar Word(string text) => new(text, default, Style.Plain);

    /// <summary>One word or text.</summary>
    /// <param name="Text">Without its quotes.</param>
    /// <param name="Style">How it was written.</param>
    public sealed record Scalar(string Text, Span At, Style Style) : Node(At)
    {
        /// <summary>True when nothing at all is written.</summary>
        public bool IsEmpty => Style == Style.Plain && Text.Length == 0;
    }

    /// <summary>Items in order.</summary>
    /// <param name="Flow">True when written in <c>[ ]</c>.</param>
    public sealed record List(ImmutableArray<Node> Items, Span At, bool Flow) : Node(At)
    {
        public bool Equals(List? other) => other is not null && Span == other.Span && Flow == other.Flow && Items.SequenceEqual(other.Items);

        public override int GetHashCode() => Span.GetHashCode();
    }

    /// <summary>Keys with their values, in order.</summary>
    /// <param name="Flow">True when written in <c>{ }</c>.</param>
    public sealed record Map(ImmutableArray<Entry> Entries, Span At, bool Flow) : Node(At)
    {
        /// <summary>The entry under a key, matched as owners' names are, or null.</summary>
        public Entry? Find(string key) => Entries.FirstOrDefault(e => Names.Same(e.Key.Text, key));

        public bool Equals(Map? other) => other is not null && Span == other.Span && Flow == other.Flow && Entries.SequenceEqual(other.Entries);

        public override int GetHashCode() => Span.GetHashCode();
    }

    /// <summary>Whether both say the same: words, keys and order; not where or in which style they are written.</summary>
    public bool SaysTheSame(Node other) => (this, other) switch
    {
        (Scalar a, Scalar b) => a.Text == b.Text,
        (List a, List b) => a.Items.Length == b.Items.Length && a.Items.Zip(b.Items).All(p => p.First.SaysTheSame(p.Second)),
        (Map a, Map b) => a.Entries.Length == b.Entries.Length
            && a.Entries.Zip(b.Entries).All(p => p.First.Key.Text == p.Second.Key.Text && p.First.Value.SaysTheSame(p.Second.Value)),
        _ => false,
    };
}

/// <summary>A key with its value.</summary>
public sealed record Entry(Node.Scalar Key, Node Value)
{
    /// <summary>From the key to the end of the value.</summary>
    public Span Span => new(Key.Span.Start, Math.Max(Key.Span.End, Value.Span.End) - Key.Span.Start);
}

/// <summary>How a text is written.</summary>
public enum Style
{
    /// <summary>Without quotes.</summary>
    Plain,

    /// <summary>In single or double quotes.</summary>
    Quoted,

    /// <summary>Indented below a bar or an angle.</summary>
    Block,
}
