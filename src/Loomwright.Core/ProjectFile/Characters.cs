using System.Globalization;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Takes out of a text, before it is parsed, what must not be in it; every other character keeps its offset.</summary>
internal static class Characters
{
    /// <summary>The text with a mark at its start, tabs in the indentation and invisible characters replaced by blanks, each reported.</summary>
    public static string Clean(string content, Found found)
    {
        var clean = content.ToCharArray();
        var indenting = true;
        var tabs = 0;
        var hidden = 0;
        for (var i = 0; i < clean.Length; i++)
        {
            var c = clean[i];
            if (c is '\n' or '\r')
            {
                indenting = true;
            }
            else if (c == '\t')
            {
                if (!indenting)
                {
                    continue;
                }

                if (!RestIsIdle(content, i) && tabs++ == 0)
                {
                    found.Stop(
                        "tab-in-indentation",
                        new Span(i, 1),
                        "a tab stands at the beginning of this line",
                        "a tab is as wide as each editor likes, so it cannot tell what belongs under what",
                        "use blanks, two for each step; most editors can replace all tabs at once");
                }

                clean[i] = ' ';
            }
            else if (c == '\uFEFF' && i == 0)
            {
                continue;
            }
            else if (IsHidden(content, i))
            {
                if (hidden++ == 0)
                {
                    found.Stop(
                        "hidden-character",
                        new Span(i, 1),
                        "a character that cannot be read ({code}) stands here",
                        "the file may be damaged, or text was pasted from a program that hides marks in it",
                        "delete it and type the word anew",
                        Evidence.Of("code", "U+" + ((int)c).ToString("X4", CultureInfo.InvariantCulture)));
                }

                clean[i] = ' ';
            }
            else if (c != ' ')
            {
                indenting = false;
            }
        }

        return new string(clean);
    }

    // A tab on an empty or comment line indents nothing.
    private static bool RestIsIdle(string text, int at)
    {
        while (at < text.Length && text[at] is ' ' or '\t')
        {
            at++;
        }

        return at == text.Length || text[at] is '\n' or '\r' or '#';
    }

    private static bool IsHidden(string text, int at)
    {
        var c = text[at];
        return char.IsControl(c) || c is '\u2028' or '\u2029' or '\uFEFF' or '\uFFFD' or '\uFFFE' or '\uFFFF'
            || (char.IsHighSurrogate(c) && (at + 1 == text.Length || !char.IsLowSurrogate(text[at + 1])))
            || (char.IsLowSurrogate(c) && (at == 0 || !char.IsHighSurrogate(text[at - 1])));
    }
}
