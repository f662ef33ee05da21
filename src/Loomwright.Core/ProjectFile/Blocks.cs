using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>
/// Reads a text as a whole when it can; after a syntax error it reads the blocks at the left edge one by one, and inside a
/// broken block its own blocks, so that one slip costs one block.
/// </summary>
internal static class Blocks
{
    private const int MostLevels = 4;

    /// <summary>The root node of a clean text, or null when it holds none.</summary>
    public static Node? Read(string text, Found found)
    {
        var start = text.Length > 0 && text[0] == '\uFEFF' ? 1 : 0;
        var whole = new Span(start, text.Length - start);
        var root = Whole(text, whole, found, out var error);
        if (error is null)
        {
            return root;
        }

        var before = found.Count;
        var parts = Parts(text, FirstDocument(text, whole, found));
        root = Join(text, parts, found, 0);
        if (found.Count == before)
        {
            // Each block reads alone, so it is their standing together that is wrong.
            error.Tell(found);
        }

        return root;
    }

    private static Span FirstDocument(string text, Span whole, Found found)
    {
        var begun = false;
        for (var at = whole.Start; at < whole.End; at = NextLine(text, at, whole.End))
        {
            if (begun && text.AsSpan(at).StartsWith("---") && (at + 3 == text.Length || char.IsWhiteSpace(text[at + 3])))
            {
                NodeReader.SecondDocument(new Span(at, 3), found);
                return new Span(whole.Start, at - whole.Start);
            }

            begun |= !IsIdle(text, at, whole.End);
        }

        return whole;
    }

    private static Node? Whole(string text, Span part, Found found, out SyntaxError? error)
    {
        var trial = new Found();
        var node = NodeReader.Read(text, part, trial, out error);
        if (error is null)
        {
            found.Take(trial);
        }

        return node;
    }

    private static Node Join(string text, List<Span> parts, Found found, int level)
    {
        var entries = ImmutableArray.CreateBuilder<Entry>();
        var items = ImmutableArray.CreateBuilder<Node>();
        var seen = new HashSet<string>(Names.Comparer);
        foreach (var part in parts)
        {
            var node = Whole(text, part, found, out var error) ?? (error is null ? null : Inside(text, part, found, error, level));
            switch (node)
            {
                case Node.Map map:
                    foreach (var entry in map.Entries)
                    {
                        if (seen.Add(entry.Key.Text))
                        {
                            entries.Add(entry);
                        }
                        else
                        {
                            NodeReader.SaidTwice(entry.Key, found);
                        }
                    }

                    break;
                case Node.List list:
                    items.AddRange(list.Items);
                    break;
            }
        }

        var start = parts.Count == 0 ? 0 : parts[0].Start;
        var span = new Span(start, parts.Count == 0 ? 0 : parts[^1].End - start);
        return items.Count > 0 && entries.Count == 0
            ? new Node.List(items.ToImmutable(), span, Flow: false)
            : new Node.Map(entries.ToImmutable(), span, Flow: false);
    }

    // A broken block "key:" with its own blocks below: read those one by one and put them under the key.
    private static Node.Map? Inside(string text, Span part, Found found, SyntaxError error, int level)
    {
        var first = part.Start;
        while (first < part.End && IsIdle(text, first, part.End))
        {
            first = NextLine(text, first, part.End);
        }

        var below = NextLine(text, first, part.End);
        var head = Whole(text, new Span(first, below - first), new Found(), out var broken);
        if (level >= MostLevels || broken is not null || below >= part.End || head is not Node.Map { Entries: [{ Value: Node.Scalar { IsEmpty: true } } entry] })
        {
            error.Tell(found);
            return null;
        }

        var before = found.Count;
        var children = Parts(text, new Span(below, part.End - below));
        var value = Join(text, children, found, level + 1);
        if (found.Count == before)
        {
            error.Tell(found);
        }

        return new Node.Map([entry with { Value = value }], part, Flow: false);
    }

    /// <summary>Splits whole lines at those of the least indentation; blank and comment lines go with what stands above them.</summary>
    private static List<Span> Parts(string text, Span range)
    {
        var least = int.MaxValue;
        for (var at = range.Start; at < range.End; at = NextLine(text, at, range.End))
        {
            if (!IsIdle(text, at, range.End))
            {
                least = Math.Min(least, Indentation(text, at, range.End));
            }
        }

        var parts = new List<Span>();
        var begun = -1;
        for (var at = range.Start; at < range.End; at = NextLine(text, at, range.End))
        {
            if (IsIdle(text, at, range.End) || Indentation(text, at, range.End) != least || text[at + least] is '}' or ']')
            {
                continue;
            }

            if (begun >= 0)
            {
                parts.Add(new Span(begun, at - begun));
            }

            begun = at;
        }

        if (begun >= 0)
        {
            parts.Add(new Span(begun, range.End - begun));
        }

        return parts;
    }

    private static int Indentation(string text, int at, int end)
    {
        var from = at;
        while (at < end && text[at] == ' ')
        {
            at++;
        }

        return at - from;
    }

    private static bool IsIdle(string text, int at, int end)
    {
        at += Indentation(text, at, end);
        return at >= end || text[at] is '\n' or '\r' or '#';
    }

    private static int NextLine(string text, int at, int end)
    {
        while (at < end && text[at] is not ('\n' or '\r'))
        {
            at++;
        }

        return at + 1 < end && text[at] == '\r' && text[at + 1] == '\n' ? at + 2 : Math.Min(at + 1, end);
    }
}
