using System.Collections.Immutable;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Fixes;

/// <summary>An edit told by the lines it changes.</summary>
internal static class LineChanges
{
    public static ImmutableArray<LineChange> Of(SourceText before, EditOutcome.Edited made)
    {
        var changes = ImmutableArray.CreateBuilder<LineChange>();
        for (var at = 0; at < made.Replacements.Length;)
        {
            var (start, end) = Lines(before.Content, made.Replacements[at].Span);
            var count = 1;
            while (at + count < made.Replacements.Length && made.Replacements[at + count].Span.Start <= end)
            {
                end = Lines(before.Content, made.Replacements[at + count].Span).End;
                count++;
            }

            changes.Add(One(before, start, end, made.Replacements[at..(at + count)]));
            at += count;
        }

        return changes.ToImmutable();
    }

    // From the first character of its first line to the last of its last, line end left out.
    private static (int Start, int End) Lines(string text, Span span)
    {
        var start = span.Start == 0 ? 0 : text.LastIndexOf('\n', span.Start - 1) + 1;
        var last = span.Length > 0 && text[span.End - 1] == '\n' ? span.End - 1 : span.End;
        var end = text.IndexOf('\n', last);
        return (start, end < 0 ? text.Length : end);
    }

    private static LineChange One(SourceText before, int start, int end, ImmutableArray<Replacement> replacements)
    {
        var after = "";
        var at = start;
        foreach (var (span, text) in replacements)
        {
            after += before.Content[at..span.Start] + text;
            at = span.End;
        }

        after += at < end ? before.Content[at..end] : "";
        string[] old = [.. Split(before.Content[start..end])];
        string[] now = [.. Split(after)];
        var head = 0;
        while (head < old.Length && head < now.Length && old[head] == now[head])
        {
            head++;
        }

        var tail = 0;
        while (tail < old.Length - head && tail < now.Length - head && old[^(tail + 1)] == now[^(tail + 1)])
        {
            tail++;
        }

        return new LineChange(before.At(start).Line + head, [.. old[head..^tail]], [.. now[head..^tail]]);
    }

    private static IEnumerable<string> Split(string text) => text.TrimEnd('\n').Split('\n').Select(l => l.TrimEnd('\r'));
}
