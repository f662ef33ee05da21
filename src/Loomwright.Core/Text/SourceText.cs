namespace Loomwright.Text;

/// <summary>A stretch of a text by character offset; <c>default</c> is the empty stretch at the very start.</summary>
public readonly record struct Span(int Start, int Length)
{
    /// <summary>The offset just past the stretch.</summary>
    public int End => Start + Length;
}

/// <summary>A place a person can find in an editor: line and column, both counted from 1.</summary>
public readonly record struct LineColumn(int Line, int Column)
{
    /// <summary><c>12:5</c></summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Line}:{Column}");
}

/// <summary>A named text exactly as it was read, byte-order mark and line ends included.</summary>
public sealed class SourceText
{
    private readonly int[] _lineStarts;

    public SourceText(string name, string content)
    {
        Name = name;
        Content = content;
        var starts = new List<int> { 0 };
        for (var i = 0; i < content.Length; i++)
        {
            if (content[i] == '\n' || (content[i] == '\r' && (i + 1 == content.Length || content[i + 1] != '\n')))
            {
                starts.Add(i + 1);
            }
        }

        _lineStarts = [.. starts];
    }

    /// <summary>What messages call it: the file's name, or <c>typed here</c>.</summary>
    public string Name { get; }

    /// <summary>Every character as read.</summary>
    public string Content { get; }

    /// <summary>The line and column of an offset; an offset past the end gives the place just past the last character.</summary>
    public LineColumn At(int offset)
    {
        var bounded = Math.Clamp(offset, 0, Content.Length);
        var index = Array.BinarySearch(_lineStarts, bounded);
        var line = index >= 0 ? index : ~index - 1;
        return new LineColumn(line + 1, bounded - _lineStarts[line] + 1);
    }

    /// <summary>The offset of a line and column counted from 1, kept inside the text.</summary>
    public int Offset(LineColumn place)
    {
        var line = Math.Clamp(place.Line - 1, 0, _lineStarts.Length - 1);
        return Math.Clamp(_lineStarts[line] + place.Column - 1, 0, Content.Length);
    }
}
