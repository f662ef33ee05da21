using System.Globalization;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.ProjectFile;

/// <summary>The rule for the owner's names: letters, digits, blanks and <c>- / ( ) + '</c>, so that <c>part.terminal</c> splits at its only dot.</summary>
internal static class OwnerName
{
    /// <summary>Whether a name may be used; if not, it is reported.</summary>
    public static bool Check(Node.Scalar written, Found found)
    {
        var name = written.Text;
        var wrong = name.EnumerateRunes().FirstOrDefault(r => !IsAllowed(r));
        if (wrong != default)
        {
            found.Stop(
                "name-sign",
                written.Span,
                "the name “{name}” has a “{sign}” in it",
                "names are of letters, digits, blanks and - / ( ) + ', so that part and terminal can be told apart at the dot between them",
                "leave the sign out",
                Evidence.Of("name", NodeReader.Short(name)),
                Evidence.Of("sign", wrong.ToString()));
            return false;
        }

        if (string.IsNullOrWhiteSpace(name) || name.Length > 80)
        {
            found.Stop(
                "name-length",
                written.Span,
                "a name is missing here, or has more than {most} characters",
                "names stand on labels and on the screen",
                "give it a short name of its own",
                Evidence.Of("most", 80));
            return false;
        }

        return true;
    }

    /// <summary>A name with a blank for every sign that names do not have.</summary>
    public static string From(TerminalRef end) => end.Terminal.Length == 0 ? end.Part : $"{end.Part} {end.Terminal}";

    private static bool IsAllowed(System.Text.Rune rune) =>
        System.Text.Rune.IsLetterOrDigit(rune)
        || rune.Value is ' ' or '-' or '/' or '(' or ')' or '+' or '\''
        || System.Text.Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark;
}
