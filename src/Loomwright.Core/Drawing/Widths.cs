namespace Loomwright.Drawing;

/// <summary>
/// How wide a text is drawn: the advance widths of Liberation Sans Narrow (open licence), measured in a browser at 1000 px and
/// rounded up. Every text of a drawing is fitted to this width, so that another face cannot run over.
/// </summary>
internal static class Widths
{
    /// <summary>Height of a capital and depth of a descender, as a share of the size.</summary>
    public const double Capital = 0.72;
    public const double Descender = 0.2;

    // Anything outside the table counts as wide as an M.
    private const int Unknown = 833;

    // Blank to tilde.
    private static readonly int[] Normal =
    [
        229, 229, 292, 457, 457, 730, 547, 158, 273, 273, 319, 480, 229, 273, 229, 229, 457, 457, 457, 457, 457, 457, 457, 457, 457, 457, 229, 229, 480, 480, 480, 457,
        833, 547, 547, 592, 592, 547, 501, 639, 592, 229, 411, 547, 457, 684, 592, 639, 547, 639, 592, 547, 501, 592, 547, 774, 547, 547, 501, 229, 229, 229, 385, 457,
        273, 457, 457, 411, 457, 457, 229, 457, 457, 183, 183, 411, 183, 684, 457, 457, 457, 457, 273, 411, 229, 457, 411, 592, 411, 411, 411, 274, 213, 274, 480,
    ];

    private static readonly int[] Heavy =
    [
        229, 273, 390, 457, 457, 730, 592, 195, 273, 273, 319, 480, 229, 273, 229, 229, 457, 457, 457, 457, 457, 457, 457, 457, 457, 457, 273, 273, 480, 480, 480, 501,
        800, 592, 592, 592, 592, 547, 501, 639, 592, 229, 457, 592, 501, 684, 592, 639, 547, 639, 592, 547, 501, 592, 547, 774, 547, 547, 501, 273, 229, 273, 480, 457,
        273, 457, 501, 457, 501, 457, 273, 501, 501, 229, 229, 457, 229, 730, 501, 501, 501, 501, 319, 457, 273, 501, 457, 639, 457, 457, 411, 319, 230, 319, 480,
    ];

    /// <summary>Pixels.</summary>
    public static double Of(string text, double size, bool bold)
    {
        var table = bold ? Heavy : Normal;
        var sum = 0;
        foreach (var c in text)
        {
            sum += c is >= ' ' and <= '~' ? table[c - ' '] : Unknown;
        }

        return Math.Round(sum * size / 1000, 1);
    }
}
