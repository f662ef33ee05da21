namespace Loomwright.Quantities;

/// <summary>The shape of a number people type: sign, digits, one decimal point or comma, exponent.</summary>
internal static class TypedNumber
{
    /// <summary>How many characters from the start are a number; 0 when it does not begin with one.</summary>
    public static int LengthOf(string text)
    {
        var at = text[0] is '+' or '-' or '−' ? 1 : 0;
        var whole = Digits(text, at);
        var end = at + whole;
        if (end < text.Length && text[end] is '.' or ',')
        {
            var part = Digits(text, end + 1);
            if (whole + part == 0)
            {
                return 0;
            }

            end += 1 + part;
        }
        else if (whole == 0)
        {
            return 0;
        }

        if (end < text.Length && text[end] is 'e' or 'E')
        {
            var sign = end + 1 < text.Length && text[end + 1] is '+' or '-' ? 1 : 0;
            var exponent = Digits(text, end + 1 + sign);
            if (exponent > 0)
            {
                end += 1 + sign + exponent;
            }
        }

        return end;
    }

    private static int Digits(string text, int from)
    {
        var at = from;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        return at - from;
    }
}
