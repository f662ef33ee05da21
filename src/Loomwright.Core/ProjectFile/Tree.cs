using System.Collections.Immutable;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>A file's text as nodes with their places. Reading never throws: what cannot be read is a finding, and the rest is there.</summary>
/// <param name="Text">The text it was read from.</param>
/// <param name="Root">The keys at the left edge; empty when nothing could be read.</param>
/// <param name="Findings">What is wrong with the writing, in file order.</param>
public sealed record Tree(SourceText Text, Node.Map Root, ImmutableArray<Finding> Findings)
{
    /// <summary>Files above this many characters are not read: a bike's file has some ten thousand.</summary>
    public const int MostCharacters = 2_000_000;

    /// <summary>Reads a text. Bounded in time and depth whatever it holds.</summary>
    public static Tree Read(SourceText text)
    {
        var found = new Found();
        var root = Read(text, found);
        return new Tree(text, root, found.InFileOrder());
    }

    internal static Node.Map Read(SourceText text, Found found)
    {
        var nothing = new Node.Map([], new Span(0, 0), Flow: false);
        if (text.Content.Length > MostCharacters)
        {
            found.Stop(
                "file-too-large",
                new Span(0, 0),
                "the file has {size} characters; at most {most} are read",
                "no bike's file is as large, so it is likely another file",
                "check that this is the design file",
                Evidence.Of("size", text.Content.Length),
                Evidence.Of("most", MostCharacters));
            return nothing;
        }

        var clean = Characters.Clean(text.Content, found);
        return Blocks.Read(clean, found) switch
        {
            Node.Map map => map,
            { } other => NotKeys(other),
            null => nothing,
        };

        Node.Map NotKeys(Node other)
        {
            if (other is not Node.Scalar { IsEmpty: true })
            {
                found.Stop(
                    "keys-expected",
                    other.Span with { Length = Math.Min(other.Span.Length, 80) },
                    "the file does not begin with a key and a colon",
                    "a design is made of keys with values, one below the other",
                    "begin with a line “loomwright: 1”");
            }

            return nothing;
        }
    }
}
