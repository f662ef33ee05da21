using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>One change to a file's tree. The editor turns it into the smallest replacement of characters that says it.</summary>
public abstract record Edit(NodePath At)
{
    /// <summary>Puts another value where one stands.</summary>
    public sealed record Replace(NodePath At, Node Value) : Edit(At);

    /// <summary>Adds a key with its value to the map at the path: first, or after the last.</summary>
    public sealed record AddKey(NodePath At, string Key, Node Value, bool First = false) : Edit(At);

    /// <summary>Adds an item after the last of the list at the path.</summary>
    public sealed record AddItem(NodePath At, Node Value) : Edit(At);

    /// <summary>Takes away the key with its value, or the item, at the path.</summary>
    public sealed record Remove(NodePath At) : Edit(At);
}

/// <summary>The way down a tree: keys as owners' names are matched, and items counted from 0.</summary>
public sealed record NodePath
{
    private NodePath(ImmutableArray<Step> steps) => Steps = steps;

    /// <summary>The map at the left edge.</summary>
    public static NodePath Root { get; } = new([]);

    internal ImmutableArray<Step> Steps { get; }

    /// <summary>The value under a key.</summary>
    public NodePath Key(string key) => new(Steps.Add(new Step(key, -1)));

    /// <summary>The item at a place in a list.</summary>
    public NodePath Item(int index) => new(Steps.Add(new Step(null, index)));

    /// <summary>One step up.</summary>
    internal NodePath Parent => new(Steps.RemoveAt(Steps.Length - 1));

    public bool Equals(NodePath? other) => other is not null && Steps.SequenceEqual(other.Steps);

    public override int GetHashCode() => Steps.Length;

    public override string ToString() => string.Join('/', Steps);

    internal readonly record struct Step(string? Name, int Index)
    {
        public bool Equals(Step other) => Index == other.Index && (Name is null ? other.Name is null : other.Name is not null && Names.Same(Name, other.Name));

        public override int GetHashCode() => Index;

        public override string ToString() => Name ?? Index.ToString(System.Globalization.CultureInfo.InvariantCulture);
    }
}

/// <summary>A stretch of the text before the edit, and what stands in its place after it.</summary>
public readonly record struct Replacement(Span Span, string Text);

/// <summary>What came of an edit.</summary>
public abstract record EditOutcome
{
    private EditOutcome()
    {
    }

    /// <summary>Done: the new text, and the replacements in file order that lead to it; every other character is as it was.</summary>
    public sealed record Edited(SourceText Text, ImmutableArray<Replacement> Replacements) : EditOutcome;

    /// <summary>Not done, and nothing is changed.</summary>
    public sealed record Refused(string What, string Cure) : EditOutcome;
}
