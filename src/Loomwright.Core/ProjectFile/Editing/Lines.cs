using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Where lines begin and end around an offset.</summary>
internal sealed class Lines(string text)
{
    /// <summary>The file's own line end: the first one in it.</summary>
    public string End { get; } = text.IndexOfAny(['\r', '\n']) is var at && at < 0 ? "\n" : text[at] == '\n' ? "\n" : at + 1 < text.Length && text[at + 1] == '\n' ? "\r\n" : "\r";

    /// <summary>Offset of the first character of the line, past a mark at the file's start.</summary>
    public int StartOf(int offset)
    {
        while (offset > 0 && text[offset - 1] is not ('\n' or '\r'))
        {
            offset--;
        }

        return offset == 0 && text.Length > 0 && text[0] == '\uFEFF' ? 1 : offset;
    }

    /// <summary>Offset just past the last character of the line, before its end mark.</summary>
    public int EndOf(int offset)
    {
        while (offset < text.Length && text[offset] is not ('\n' or '\r'))
        {
            offset++;
        }

        return offset;
    }

    /// <summary>Offset of the next line, past this one's end mark.</summary>
    public int NextAfter(int offset)
    {
        var end = EndOf(offset);
        return end == text.Length ? end : text[end] == '\r' && end + 1 < text.Length && text[end + 1] == '\n' ? end + 2 : end + 1;
    }

    /// <summary>Offset just past the last character of the line before, before its end mark; the line's own start on the first line.</summary>
    public int EndOfPrevious(int offset)
    {
        var start = StartOf(offset);
        return start > 1 && text[start - 1] == '\n' && text[start - 2] == '\r' ? start - 2 : start > 0 && text[start - 1] is '\n' or '\r' ? start - 1 : start;
    }

    /// <summary>Characters before the offset on its line.</summary>
    public int ColumnOf(int offset) => offset - StartOf(offset);

    /// <summary>Whether only blanks stand before the offset on its line.</summary>
    public bool IsFirst(int offset)
    {
        var start = StartOf(offset);
        return text.AsSpan(start, offset - start).Trim(' ').IsEmpty;
    }

    /// <summary>The offset after going back over blanks.</summary>
    public int BackOverBlanks(int offset)
    {
        while (offset > 0 && text[offset - 1] is ' ' or '\t')
        {
            offset--;
        }

        return offset;
    }

    /// <summary>The same stretch grown to whole lines.</summary>
    public Span Whole(Span span)
    {
        var start = StartOf(span.Start);
        return new Span(start, NextAfter(span.End) - start);
    }
}
