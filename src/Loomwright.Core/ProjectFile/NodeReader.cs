using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Text;
using SharpYaml;
using SharpYaml.Events;

namespace Loomwright.ProjectFile;

/// <summary>Makes nodes of one stretch of text from the parser's events, and refuses what plain files do not use.</summary>
internal sealed class NodeReader
{
    private const int MostDeep = 40;

    private readonly string _text;
    private readonly int _start;
    private readonly Found _found;
    private readonly IParser _parser;

    private NodeReader(string text, Span part, Found found)
    {
        _text = text;
        _start = part.Start;
        _found = found;
        _parser = Parser.CreateParser(new StringReader(text.Substring(part.Start, part.Length)));
    }

    /// <summary>The node a stretch of text holds, or null when it holds none.</summary>
    /// <param name="text">The whole text, already clean.</param>
    /// <param name="part">The stretch, whole lines.</param>
    /// <param name="found">Where findings go; only complete when <paramref name="error"/> is null.</param>
    /// <param name="error">Where and why the parser stopped, or null.</param>
    public static Node? Read(string text, Span part, Found found, out SyntaxError? error)
    {
        var reader = new NodeReader(text, part, found);
        try
        {
            error = null;
            return reader.Document();
        }
        catch (YamlException broken)
        {
            error = SyntaxError.Of(broken, part, text);
            return null;
        }
        catch (TooDeepException deep)
        {
            error = SyntaxError.TooDeep(deep.At);
            return null;
        }
    }

    private Node? Document()
    {
        Node? root = null;
        var documents = 0;
        while (_parser.MoveNext())
        {
            switch (_parser.Current)
            {
                case DocumentStart start:
                    if (++documents == 2)
                    {
                        SecondDocument(At(start), _found);
                        return root;
                    }

                    if (At(start) is { Length: > 0 } line && _text[line.Start] == '%')
                    {
                        Refuse(At(start), "a directive", "delete the line that begins with a percent sign");
                    }

                    break;
                case StreamStart or StreamEnd or DocumentEnd:
                    break;
                default:
                    root = ReadNode(0);
                    break;
            }
        }

        return root;
    }

    private Node ReadNode(int depth)
    {
        var current = _parser.Current!;
        var at = At(current);
        if (depth > MostDeep)
        {
            throw new TooDeepException(at);
        }

        if (current is NodeEvent { Anchor: not null })
        {
            Refuse(at, "an anchor (&)", "write the value out; quote a text that begins with this sign");
        }

        if (current is NodeEvent { Tag: not null })
        {
            Refuse(at, "a tag (!)", "delete the tag; quote a text that begins with this sign");
        }

        switch (current)
        {
            case Scalar scalar:
                return Word(scalar, at);
            case SequenceStart list:
                return Items(list, at, depth);
            case MappingStart map:
                return Keys(map, at, depth);
            default:
                Refuse(at, "an alias (*)", "write the value out again; quote a text that begins with this sign");
                return new Node.Scalar("", at, Style.Plain);
        }
    }

    private Node.Scalar Word(Scalar scalar, Span at)
    {
        var style = scalar.Style switch
        {
            ScalarStyle.SingleQuoted or ScalarStyle.DoubleQuoted => Style.Quoted,
            ScalarStyle.Literal or ScalarStyle.Folded => Style.Block,
            _ => Style.Plain,
        };
        var end = at.End;
        while (style == Style.Block && end > at.Start && char.IsWhiteSpace(_text[end - 1]))
        {
            end--;
        }

        return new Node.Scalar(scalar.Value, new Span(at.Start, end - at.Start), style);
    }

    private Node.List Items(SequenceStart start, Span at, int depth)
    {
        var items = ImmutableArray.CreateBuilder<Node>();
        while (_parser.MoveNext() && _parser.Current is not SequenceEnd)
        {
            items.Add(ReadNode(depth + 1));
        }

        var flow = start.Style == YamlStyle.Flow;
        var end = flow ? Close(']') : items.Count == 0 ? at.End : items[^1].Span.End;
        return new Node.List(items.ToImmutable(), new Span(at.Start, end - at.Start), flow);
    }

    private Node.Map Keys(MappingStart start, Span at, int depth)
    {
        var flow = start.Style == YamlStyle.Flow;
        var entries = ImmutableArray.CreateBuilder<Entry>();
        var seen = new HashSet<string>(Names.Comparer);
        while (_parser.MoveNext() && _parser.Current is not MappingEnd)
        {
            var key = ReadNode(depth + 1);
            if (!_parser.MoveNext())
            {
                break;
            }

            var value = ReadNode(depth + 1);
            if (key is not Node.Scalar word)
            {
                Refuse(key.Span, "a list or a set of keys as a key", "write one name before the colon");
            }
            else if (word.Text == "<<" && word.Style == Style.Plain)
            {
                Refuse(word.Span, "a merge (<<)", "write the keys out");
            }
            else if (flow && IsSplit(word, value))
            {
                _found.Stop(
                    "split-at-comma",
                    word.Span,
                    "“{word}” stands here without a colon: a comma before it split the value",
                    "inside braces a comma ends a value",
                    "put the whole value in quotes, or write a decimal point",
                    Evidence.Of("word", Short(word.Text)));

                // What stands before the comma is only half a value.
                if (entries.Count > 0)
                {
                    entries.RemoveAt(entries.Count - 1);
                }
            }
            else if (!seen.Add(word.Text))
            {
                SaidTwice(word, _found);
            }
            else
            {
                entries.Add(new Entry(word, value));
            }
        }

        var end = flow ? Close('}') : entries.Count == 0 ? at.End : entries[^1].Span.End;
        return new Node.Map(entries.ToImmutable(), new Span(at.Start, end - at.Start), flow);
    }

    /// <summary>Reports what stands after a line of three dashes.</summary>
    public static void SecondDocument(Span at, Found found) => found.Stop(
        "second-document",
        at,
        "a second document begins here",
        "a file holds one bike; what follows is not read",
        "delete the line of three dashes, or move what follows to a file of its own");

    /// <summary>Reports a key that already stands in the same place.</summary>
    public static void SaidTwice(Node.Scalar key, Found found) => found.Stop(
        "said-twice",
        key.Span,
        "“{key}” already stands above in the same place",
        "two of the same name cannot both count; only the first is read",
        "delete one, or give it another name",
        Evidence.Of("key", Short(key.Text)));

    private bool IsSplit(Node.Scalar key, Node value)
    {
        if (value is not Node.Scalar { IsEmpty: true })
        {
            return false;
        }

        var at = key.Span.End;
        while (at < _text.Length && char.IsWhiteSpace(_text[at]))
        {
            at++;
        }

        return at == _text.Length || _text[at] != ':';
    }

    private int Close(char bracket)
    {
        var end = _start + _parser.Current!.Start.Index;
        return end < _text.Length && _text[end] == bracket ? end + 1 : end;
    }

    private Span At(ParsingEvent e)
    {
        var start = Math.Clamp(_start + e.Start.Index, 0, _text.Length);
        return new Span(start, Math.Clamp(_start + e.End.Index, start, _text.Length) - start);
    }

    private void Refuse(Span at, string what, string cure) =>
        _found.Stop("plain-yaml-only", at, what + " stands here", "a file that an owner and a tool both edit must say each thing where it stands", cure);

    internal static string Short(string text) => text.Length <= 60 ? text : text[..60] + "…";

#pragma warning disable CA1032, CA1064 // Never leaves this file.
    private sealed class TooDeepException(Span at) : Exception
    {
        public Span At { get; } = at;
    }
#pragma warning restore CA1032, CA1064
}
