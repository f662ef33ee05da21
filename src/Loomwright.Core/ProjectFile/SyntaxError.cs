using Loomwright.Text;
using SharpYaml;

namespace Loomwright.ProjectFile;

/// <summary>Where and why the writing could not be followed, in the owner's words.</summary>
internal sealed record SyntaxError(string Code, Span At, string What, string Why, string Cure)
{
    /// <summary>Reports it.</summary>
    public void Tell(Found found) => found.Stop(Code, At, What, Why, Cure);

    public static SyntaxError TooDeep(Span at) => new(
        "too-deep", at, "brackets or lists stand too deep inside each other here", "no part of a design is nested as deep", "check for a bracket that was never closed");

    public static SyntaxError Of(YamlException broken, Span part, string text)
    {
        var at = Math.Clamp(part.Start + broken.Start.Index, 0, text.Length);
        var span = new Span(at, at < text.Length ? 1 : 0);
        bool Says(string words) => broken.Message.Contains(words, StringComparison.OrdinalIgnoreCase);
        return Says("mapping values are not allowed")
            ? new("second-colon", span, "a colon stands where no key can be", "a key above it has lost its own colon, a text with a colon in it is not in quotes, or the line is indented differently from its neighbours", "look at the line above first: a key needs a colon after it. Then put the text in quotes, or line the key up with its neighbours")
            : Says("quoted scalar")
            ? new("quote-left-open", span, "a quote begins here that is not closed, or holds a sign it cannot", "everything after it is taken as part of the text", "close the quote; inside double quotes write a backslash twice")
            : Says("cannot start any token")
            ? new("sign-needs-quotes", span, "a text cannot begin with this sign", "the sign has a meaning of its own in this kind of file", "put the text in quotes")
            : Says("flow") || Says("node content")
            ? new("bracket-left-open", span, "a bracket or brace is not closed before here, or a comma is missing", "everything up to its end is taken as one list", "close it, or write one item a line with a dash before it")
            : Says("simple key")
            ? new("colon-missing", span, "a line has no colon after its key", "without one it cannot be told what the line says", "write the key, a colon, a blank and the value")
            : Says("block")
            ? new("indentation", span, "this line is not indented like its neighbours", "what belongs under what is told by the indentation alone", "line it up with the keys or dashes it belongs to")
            : new("cannot-be-read", span, "the writing cannot be followed here", "the rules of plain YAML were left", "compare with a line of the same kind that is read");
    }
}
