using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Rewrites one pair of braces or brackets as block, its comments on lines of their own above it.</summary>
internal sealed class FlowToBlock(Tree tree, Lines lines)
{
    private readonly string _text = tree.Text.Content;

    /// <summary>The replacement of the old braces by the value's lines.</summary>
    public Replacement Rewrite(NodePath path, Node old, Node value)
    {
        var comments = Comments(old);
        if (Changed.Find(tree.Root, path.Parent) is Node.Map map)
        {
            var key = map.Find(path.Steps[^1].Name!)!.Key;
            var column = lines.ColumnOf(key.Span.Start);
            var from = _text.IndexOf(':', key.Span.End) + 1;
            var written = Writer.AfterColon(value, column, lines.End);
            var above = string.Concat(comments.Select(c => lines.End + new string(' ', column + 2) + c));
            if (written[0] == ' ' && above.Length > 0)
            {
                written = lines.End + new string(' ', column + 2) + written[1..];
            }

            return new Replacement(new Span(from, old.Span.End - from), above + written);
        }

        var at = lines.ColumnOf(old.Span.Start);
        var margin = lines.End + new string(' ', at);
        return new Replacement(old.Span, string.Concat(comments.Select(c => c + margin)) + Writer.Lines(value, at, lines.End));
    }

    // Inside braces a comment runs from a # outside any word to the end of its line.
    private ImmutableArray<string> Comments(Node node)
    {
        var words = new List<Span>();
        Collect(node, words);
        var comments = ImmutableArray.CreateBuilder<string>();
        for (var at = node.Span.Start; at < node.Span.End; at++)
        {
            var word = words.FirstOrDefault(w => w.Start <= at && at < w.End);
            if (word.Length > 0)
            {
                at = word.End - 1;
            }
            else if (_text[at] == '#')
            {
                var end = lines.EndOf(at);
                comments.Add(_text[at..end].TrimEnd());
                at = end;
            }
        }

        return comments.ToImmutable();
    }

    private static void Collect(Node node, List<Span> words)
    {
        switch (node)
        {
            case Node.Scalar { Span.Length: > 0 } word:
                words.Add(word.Span);
                break;
            case Node.List list:
                foreach (var item in list.Items)
                {
                    Collect(item, words);
                }

                break;
            case Node.Map map:
                foreach (var entry in map.Entries)
                {
                    Collect(entry.Key, words);
                    Collect(entry.Value, words);
                }

                break;
        }
    }
}
