using System.Buffers;
using System.Globalization;
using System.Text;

namespace Loomwright.ProjectFile;

/// <summary>Writes nodes as plain YAML: block style, short lists of names on one line.</summary>
internal static class Writer
{
    /// <summary>Longest line written in brackets.</summary>
    public const int Widest = 90;

    // Other programs take these for truth values or for nothing.
    private static readonly HashSet<string> TakenForMore = new(StringComparer.OrdinalIgnoreCase) { "on", "off", "yes", "no", "true", "false", "null", "~", "y", "n" };

    private static readonly SearchValues<char> FlowSigns = SearchValues.Create(",[]{}:");

    /// <summary>A word as it must be written to be read back the same.</summary>
    public static string Word(string text, bool inFlow) => NeedsQuotes(text, inFlow) ? Quoted(text) : text;

    /// <summary>A node on one line.</summary>
    public static string Flow(Node node) => node switch
    {
        Node.Scalar word => Word(word.Text, inFlow: true),
        Node.List list => "[" + string.Join(", ", list.Items.Select(Flow)) + "]",
        Node.Map map => "{" + string.Join(", ", map.Entries.Select(e => Word(e.Key.Text, inFlow: true) + ": " + Flow(e.Value))) + "}",
        _ => "",
    };

    /// <summary>What follows a key and its colon: a blank and the value, or lines below it. Ends without a line end.</summary>
    public static string AfterColon(Node node, int keyColumn, string lineEnd) => OnOneLine(node, keyColumn) is { } line
        ? " " + line
        : lineEnd + new string(' ', keyColumn + 2) + Lines(node, keyColumn + 2, lineEnd);

    /// <summary>A node whose first line begins at <paramref name="column"/>, already indented to it. Ends without a line end.</summary>
    public static string Lines(Node node, int column, string lineEnd)
    {
        if (OnOneLine(node, column) is { } line)
        {
            return line;
        }

        var next = lineEnd + new string(' ', column);
        return node switch
        {
            Node.List list => string.Join(next, list.Items.Select(i => "- " + Lines(i, column + 2, lineEnd))),
            Node.Map map => string.Join(next, map.Entries.Select(e => Word(e.Key.Text, inFlow: false) + ":" + AfterColon(e.Value, column, lineEnd))),
            _ => "",
        };
    }

    private static string? OnOneLine(Node node, int column) => node switch
    {
        Node.Scalar word => Word(word.Text, inFlow: false),
        Node.Map { Entries.IsEmpty: true } => "{}",
        Node.List list when IsShortNames(list) && Flow(list) is var line && column + line.Length <= Widest => line,
        _ => null,
    };

    private static bool IsShortNames(Node.List list) => list.Items.All(i => i is Node.Scalar || (i is Node.List inner && IsShortNames(inner)));

    private static bool NeedsQuotes(string text, bool inFlow) =>
        text.Length == 0
        || char.IsWhiteSpace(text[0])
        || char.IsWhiteSpace(text[^1])
        || TakenForMore.Contains(text)
        || ",[]{}#&*!|>'\"%@`".Contains(text[0], StringComparison.Ordinal)
        || ("-?:".Contains(text[0], StringComparison.Ordinal) && (text.Length == 1 || !char.IsAsciiLetterOrDigit(text[1])))
        || text[^1] == ':'
        || text.Contains(": ", StringComparison.Ordinal)
        || text.Contains(" #", StringComparison.Ordinal)
        || text.StartsWith("...", StringComparison.Ordinal)
        || text == "<<"
        || text.Any(IsHidden)
        || (inFlow && text.AsSpan().ContainsAny(FlowSigns));

    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var c in text)
        {
            quoted.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\n' => "\\n",
                '\r' => "\\r",
                '\t' => "\\t",
                _ when IsHidden(c) => "\\u" + ((int)c).ToString("X4", CultureInfo.InvariantCulture),
                _ => c.ToString(),
            });
        }

        return quoted.Append('"').ToString();
    }

    private static bool IsHidden(char c) => char.IsControl(c) || c is '\u2028' or '\u2029' or '\uFEFF' or '\uFFFE' or '\uFFFF';
}
