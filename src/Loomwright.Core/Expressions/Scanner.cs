using System.Globalization;
using System.Text;
using Loomwright.Text;

namespace Loomwright.Expressions;

/// <summary>A text folded as names are, with the way back to the characters as written.</summary>
internal sealed class Scanner
{
    private readonly string _text;
    private readonly string _folded;
    private readonly int[] _offsets;

    public Scanner(string text)
    {
        var folded = new StringBuilder(text.Length);
        var offsets = new List<int>(text.Length + 1);
        for (var at = 0; at < text.Length;)
        {
            var length = StringInfo.GetNextTextElementLength(text.AsSpan(at));
            var blank = char.IsWhiteSpace(text[at]);
            foreach (var c in blank ? " " : Names.Fold(text.Substring(at, length)))
            {
                if (!blank || (folded.Length > 0 && folded[^1] != ' '))
                {
                    folded.Append(c);
                    offsets.Add(at);
                }
            }

            at += length;
        }

        offsets.Add(text.Length);
        (_text, _folded, _offsets) = (text, folded.ToString(), [.. offsets]);
    }

    /// <summary>Where the reading is, in the folded text.</summary>
    public int At { get; set; }

    /// <summary>The same place in the text as written.</summary>
    public int Offset => _offsets[Math.Min(At, _offsets.Length - 1)];

    public bool AtEnd
    {
        get
        {
            SkipBlank();
            return At >= _folded.Length;
        }
    }

    /// <summary>Steps over a word of the language, blanks inside it one each; says whether it was there.</summary>
    public bool Take(string word)
    {
        if (!Sees(word))
        {
            return false;
        }

        At += word.Length;
        return true;
    }

    /// <summary>Whether the folded word stands here and ends where a word may end.</summary>
    public bool Sees(string word)
    {
        SkipBlank();
        return string.CompareOrdinal(_folded, At, word, 0, word.Length) == 0
            && At + word.Length is var end && (end == _folded.Length || !Joins(word[^1], _folded[end]));
    }

    /// <summary>Steps over a number (point or comma); null when none stands here or it is too long to be one.</summary>
    public decimal? TakeNumber()
    {
        SkipBlank();
        var end = At;
        while (end < _folded.Length && (char.IsAsciiDigit(_folded[end]) || IsDecimal(end)))
        {
            end++;
        }

        var text = _folded[At..end].Replace(',', '.');
        if (text.Length > 12 || !decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
        {
            return null;
        }

        At = end;
        return number;
    }

    /// <summary>Steps over a number with a unit of time, in ticks of 100 ns; null when there is none.</summary>
    public decimal? TakeTicks()
    {
        var start = At;
        decimal? ticks = TakeNumber() is not { } number ? null
            : Take("ms") ? number * TimeSpan.TicksPerMillisecond
            : Take("s") ? number * TimeSpan.TicksPerSecond
            : Take("min") ? number * TimeSpan.TicksPerMinute
            : null;
        if (ticks is null)
        {
            At = start;
        }

        return ticks;
    }

    /// <summary>The words from here up to a bracket, a separator or one of the words given; as written, blanks collapsed. Steps over them only when asked to.</summary>
    public string Words(IReadOnlyCollection<string> upTo, bool take = false)
    {
        SkipBlank();
        var start = At;
        var end = At;
        while (!AtEnd && !"();,".Contains(_folded[At], StringComparison.Ordinal) && !upTo.Any(Sees))
        {
            while (At < _folded.Length && _folded[At] != ' ' && !"();,".Contains(_folded[At], StringComparison.Ordinal))
            {
                At++;
            }

            end = At;
        }

        At = take ? end : start;
        return string.Join(' ', _text[_offsets[start].._offsets[end]].Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    private void SkipBlank()
    {
        while (At < _folded.Length && _folded[At] == ' ')
        {
            At++;
        }
    }

    private bool IsDecimal(int at) =>
        _folded[at] is '.' or ',' && at > At && at + 1 < _folded.Length && char.IsAsciiDigit(_folded[at + 1]);

    // "left" must not be found inside "left-hand" or "leftmost"; "(" and ")" part words.
    private static bool Joins(char last, char next) => IsPartOfWord(last) && IsPartOfWord(next);

    private static bool IsPartOfWord(char c) =>
        char.IsLetterOrDigit(c) || char.GetUnicodeCategory(c) is UnicodeCategory.NonSpacingMark or UnicodeCategory.Surrogate || "-/'+".Contains(c, StringComparison.Ordinal);
}
