using System.Globalization;

namespace Loomwright.Tests;

/// <summary>Files spoilt in ways that fingers, editors and damaged disks spoil them; the same number and start give the same text.</summary>
public static class Mutants
{
    private static readonly string[] Scraps =
    [
        "\t", "  ", "\r\n", "\n", ":", ": ", "- ", "{", "}", "[", "]", ",", "'", "\"", "#", " #", "&a ", "*a", "!t ", "|", ">", "?", "%", "@", "`", "---\n", "...\n",
        "<<: ", "\0", "\uFEFF", "\u2028", "\uD800", "é", "\u0301", "🏍", "1e999", "off", "~", "12,4", "0x1F", "loomwright: 2\n", "parts:\n", "  - from: box.X4\n", "x-y: z\n", "NaN A",
    ];

    /// <summary>One mutant of a text: one to eight changes.</summary>
    public static string Of(string text, int number)
    {
        var random = new Random(number);
        for (var changes = random.Next(1, 9); changes > 0; changes--)
        {
            text = Change(text, random);
        }

        return text;
    }

    private static string Change(string text, Random random)
    {
        if (text.Length == 0)
        {
            return Scraps[random.Next(Scraps.Length)];
        }

        var at = random.Next(text.Length);
        var lines = text.Split('\n');
        var line = random.Next(lines.Length);
        switch (random.Next(11))
        {
            case 0:
                return text.Remove(at, 1);
            case 1:
                return text.Insert(at, Scraps[random.Next(Scraps.Length)]);
            case 2:
                return text.Remove(at, 1).Insert(at, Scraps[random.Next(Scraps.Length)]);
            case 3:
                return text[..at];
            case 4:
                return string.Join('\n', lines.Where((_, i) => i != line));
            case 5:
                return string.Join('\n', lines.Append(lines[line]));
            case 6:
                lines[line] = new string(' ', random.Next(9)) + lines[line].TrimStart();
                return string.Join('\n', lines);
            case 7:
                var other = random.Next(lines.Length);
                (lines[line], lines[other]) = (lines[other], lines[line]);
                return string.Join('\n', lines);
            case 8:
                var length = random.Next(1, Math.Min(80, text.Length - at) + 1);
                return text.Insert(random.Next(text.Length), text.Substring(at, length));
            case 9:
                return text.Insert(at, string.Concat(Enumerable.Repeat(Scraps[random.Next(Scraps.Length)], random.Next(2, 60))));
            default:
                return text.Insert(at, random.Next(-1000, 100000).ToString(CultureInfo.InvariantCulture));
        }
    }
}
