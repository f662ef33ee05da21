using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Loomwright.Drawing;

/// <summary>
/// A sheet larger than A4 cut into pages that a common printer prints at 100 %: the type stays as large as it is. Neighbours
/// share a strip, and the dashed line in it says where to cut and where to lay the next page on.
/// </summary>
public static class A4Pages
{
    private const double Shared = 10 * Paper.PixelsPerMillimetre;
    private const double Margin = 7 * Paper.PixelsPerMillimetre;

    /// <summary>The pages as SVG documents of A4, row by row from the left; one when the sheet is A4 itself.</summary>
    public static ImmutableArray<string> Of(Scene scene)
    {
        if (scene.Width <= Paper.A4.Width && scene.Height <= Paper.A4.Height)
        {
            return [Svg.Write(scene)];
        }

        var (wide, high) = new[] { (Paper.A4.Width, Paper.A4.Height), (Paper.A4.Height, Paper.A4.Width) }.MinBy(p => Count(scene.Width, p.Item1) * Count(scene.Height, p.Item2));
        var (columns, rows) = (Count(scene.Width, wide), Count(scene.Height, high));
        return [.. from row in Enumerable.Range(0, rows) from column in Enumerable.Range(0, columns) select Page(scene, wide, high, column, columns, row, rows)];
    }

    private static int Count(double sheet, double page) => (int)Math.Ceiling((sheet - (2 * Margin) - Shared) / (page - (2 * Margin) - Shared));

    private static string Page(Scene scene, double wide, double high, int column, int columns, int row, int rows)
    {
        var (seenWide, seenHigh) = (wide - (2 * Margin), high - (2 * Margin));
        var (left, top) = (Margin + (column * (seenWide - Shared)), Margin + (row * (seenHigh - Shared)));
        var svg = new StringBuilder();
        Svg.Open(svg, new Area(0, 0, wide, high), dim: false);
        svg.Append(CultureInfo.InvariantCulture, $"<svg x=\"{Svg.N(Margin)}\" y=\"{Svg.N(Margin)}\" width=\"{Svg.N(seenWide)}\" height=\"{Svg.N(seenHigh)}\" viewBox=\"{Svg.N(left)} {Svg.N(top)} {Svg.N(seenWide)} {Svg.N(seenHigh)}\">\n");
        Svg.Content(svg, scene);
        svg.Append("</svg>\n");
        if (column < columns - 1)
        {
            Cut(svg, FormattableString.Invariant($"M{Svg.N(wide - Margin - (Shared / 2))} 0V{Svg.N(high)}"));
        }

        if (row < rows - 1)
        {
            Cut(svg, FormattableString.Invariant($"M0 {Svg.N(high - Margin - (Shared / 2))}H{Svg.N(wide)}"));
        }

        var number = (row * columns) + column + 1;
        var words = string.Create(CultureInfo.InvariantCulture, $"{scene.Title}: page {number} of {columns * rows}, print at 100 %{(number < columns * rows ? "; cut at the dashed line, lay the next page under it" : "")}");
        Svg.Text(svg, new Lettering(words, new Spot(Margin, high - 14), Hold.Start));
        return svg.Append("</svg>\n").ToString();
    }

    private static void Cut(StringBuilder svg, string path) => svg.Append(CultureInfo.InvariantCulture, $"<path class=\"hair\" stroke-dasharray=\"12 8\" d=\"{path}\"/>\n");
}
