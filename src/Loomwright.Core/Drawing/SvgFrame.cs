using System.Globalization;
using System.Text;

namespace Loomwright.Drawing;

/// <summary>What stands around a sheet: title, page, the colours and signs used, grey squares, and where it comes from.</summary>
internal static class SvgFrame
{
    private static readonly string[] Greys = ["#1a1a1a", "#555", "#8c8c8c", "#c6c6c6", "#fff"];

    private static readonly (string Symbol, string Meaning)[] Meanings =
    [
        ("ground", "return to the ground named beside it"),
        ("arrow", "left of the mark: input; right: output"),
    ];

    public static void Write(StringBuilder svg, Scene scene)
    {
        var (left, right, top, bottom) = (Paper.Left, scene.Width - Paper.Left, Paper.Left, scene.Height - Paper.Left);
        var title = new Lettering(scene.Title, new Spot(left, top + 20), Hold.Start) { Size = 28, Bold = true };
        Svg.Text(svg, title);
        Svg.Text(svg, new Lettering(scene.About, new Spot(left + title.Width + 16, top + 20), Hold.Start) { Quiet = true });
        Svg.Text(svg, new Lettering(string.Create(CultureInfo.InvariantCulture, $"page {scene.Page} of {scene.Pages}"), new Spot(right, top + 20), Hold.End) { Size = 19, Bold = true });
        Rule(svg, left, right, top + 32);
        var y = bottom - Paper.Footer + 13;
        Rule(svg, left, right, y - 13);
        Colours(svg, scene, left, y + 14);
        Signs(svg, scene, right - 830, y + 14);
        Grey(svg, right - 500, y);
        Svg.Text(svg, new Lettering(scene.Source, new Spot(right, y + 18), Hold.End) { Quiet = true });
        Svg.Text(svg, new Lettering("computed from the file;", new Spot(right, y + 42), Hold.End) { Quiet = true });
        Svg.Text(svg, new Lettering("your bike was not measured", new Spot(right, y + 66), Hold.End) { Quiet = true });
    }

    private static void Rule(StringBuilder svg, double left, double right, double y) =>
        svg.Append(CultureInfo.InvariantCulture, $"<path class=\"hair\" d=\"M{Svg.N(left)} {Svg.N(y)}H{Svg.N(right)}\"/>\n");

    private static void Colours(StringBuilder svg, Scene scene, double left, double top)
    {
        var used = scene.Strands.Select(s => s.Colour).OfType<Design.WireColour>().SelectMany(c => new[] { c.Base, c.Tracer }).ToHashSet(StringComparer.Ordinal);
        var place = 0;
        foreach (var tint in Insulation.Tints.Where(t => used.Contains(t.Letters)))
        {
            var (x, y) = (left + (place / 3 * 132), top + (place % 3 * 24));
            svg.Append(CultureInfo.InvariantCulture, $"<path id=\"{scene.Id}-k{tint.Letters}\" class=\"none\" d=\"M{Svg.N(x)} {Svg.N(y - 5)}h26\"/>");
            Svg.Wire(svg, $"{scene.Id}-k{tint.Letters}", new Design.WireColour(tint.Letters, null), 1, "");
            var letters = new Lettering(tint.Letters, new Spot(x + 34, y), Hold.Start) { Bold = true };
            Svg.Text(svg, letters);
            Svg.Text(svg, new Lettering(tint.Word, new Spot(x + 62, y), Hold.Start));
            place++;
        }
    }

    private static void Signs(StringBuilder svg, Scene scene, double left, double top)
    {
        var y = top;
        foreach (var (symbol, meaning) in Meanings.Where(m => scene.Signs.Any(s => s.Symbol == m.Symbol)))
        {
            svg.Append(CultureInfo.InvariantCulture, $"<use class=\"{(symbol == "arrow" ? "f" : "s")}\" href=\"#{scene.Id}-{symbol}\" x=\"{Svg.N(left + 10)}\" y=\"{Svg.N(y - 5)}\"/>\n");
            Svg.Text(svg, new Lettering(meaning, new Spot(left + 28, y), Hold.Start));
            y += 24;
        }

        svg.Append(CultureInfo.InvariantCulture, $"<circle class=\"f\" cx=\"{Svg.N(left + 10)}\" cy=\"{Svg.N(y - 5)}\" r=\"5\"/>\n");
        Svg.Text(svg, new Lettering("joint; dots on one bar are one joint", new Spot(left + 28, y), Hold.Start));
        if (!scene.CaseLights.IsEmpty)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<circle class=\"glow\" cx=\"{Svg.N(left - 150)}\" cy=\"{Svg.N(top - 5)}\" r=\"4.5\"/>\n");
            Svg.Text(svg, new Lettering("light on the case", new Spot(left - 138, top), Hold.Start));
        }
    }

    private static void Grey(StringBuilder svg, double left, double top)
    {
        for (var i = 0; i < Greys.Length; i++)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{Svg.N(left + (i * 26))}\" y=\"{Svg.N(top)}\" width=\"26\" height=\"20\" fill=\"{Greys[i]}\" stroke=\"#17211d\"/>\n");
        }

        Svg.Text(svg, new Lettering("printed grey? all five must", new Spot(left, top + 42), Hold.Start) { Quiet = true });
        Svg.Text(svg, new Lettering("differ, else go by the letters", new Spot(left, top + 66), Hold.Start) { Quiet = true });
    }
}
