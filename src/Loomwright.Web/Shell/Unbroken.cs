using System.Text.RegularExpressions;

namespace Loomwright.Web.Shell;

/// <summary>A text in which no line ends between a terminal's name and its sign: cut apart, plus and minus look alike.</summary>
internal static partial class Unbroken
{
    /// <summary>The text with the space before every + or − that stands alone kept together with it.</summary>
    public static string Of(string text) => BeforeASign().Replace(text, "\u00A0");

    [GeneratedRegex(@" (?=[+-](?:[ .,:;)]|$))", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex BeforeASign();
}
