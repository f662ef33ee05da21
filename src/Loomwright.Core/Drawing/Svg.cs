using System.Collections.Immutable;
using System.Globalization;
using System.Security;
using System.Text;
using Loomwright.Design;

namespace Loomwright.Drawing;

/// <summary>Writes a sheet as SVG: the same bytes for the same sheet, numbers in the invariant culture.</summary>
public static class Svg
{
    private const double Bend = 5;
    private const double Outline = 0.7;
    private const double Halo = 1;

    /// <summary>The whole document, by day or in the dim theme; printed it is always on white.</summary>
    /// <param name="scene">The sheet.</param>
    /// <param name="dim">For a dark screen.</param>
    /// <param name="window">The part of the sheet to be shown; null: all of it.</param>
    public static string Write(Scene scene, bool dim = false, Area? window = null)
    {
        var svg = new StringBuilder();
        Open(svg, window ?? new Area(0, 0, scene.Width, scene.Height), dim);
        Content(svg, scene);
        return svg.Append("</svg>\n").ToString();
    }

    /// <summary>The document's first tag, for what is shown of a sheet.</summary>
    internal static void Open(StringBuilder svg, Area shown, bool dim) =>
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"{(dim ? "loom dim" : "loom")}\" viewBox=\"{N(shown.X)} {N(shown.Y)} {N(shown.Width)} {N(shown.Height)}\" width=\"{N(shown.Width / Paper.PixelsPerMillimetre)}mm\" height=\"{N(shown.Height / Paper.PixelsPerMillimetre)}mm\">\n");

    /// <summary>Everything of a sheet between its first tag and its last.</summary>
    internal static void Content(StringBuilder svg, Scene scene)
    {
        svg.Append(CultureInfo.InvariantCulture, $"<title>{Plain(scene.Title)}</title>\n<style>{SvgStyle.Sheet}</style>\n<defs>\n");
        foreach (var (name, path) in Symbols.All)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path id=\"{scene.Id}-{name}\" d=\"{path}\"/>\n");
        }

        for (var i = 0; i < scene.Strands.Length; i++)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path id=\"{scene.Id}-w{i}\" d=\"{Path(scene.Strands[i].Path)}\"/>\n");
        }

        svg.Append(CultureInfo.InvariantCulture, $"</defs>\n<rect class=\"sheet\" width=\"{N(scene.Width)}\" height=\"{N(scene.Height)}\"/>\n");
        Body(svg, scene);
        SvgFrame.Write(svg, scene);
    }

    /// <summary>A number as SVG takes it: at most one decimal place.</summary>
    internal static string N(double value) => Math.Round(value, 1).ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>A text, fitted to the width it was given.</summary>
    internal static void Text(StringBuilder svg, Lettering text)
    {
        if (text.Numbered)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<circle class=\"stop\" cx=\"{N(text.At.X)}\" cy=\"{N(text.At.Y - 7)}\" r=\"11\"/>\n");
        }

        var classes = string.Join(' ', new[] { text.Bold ? "b" : "", text.Quiet ? "m" : "", text.Wire is null ? "" : "l", text.Return is null ? "" : "r", text.Hold == Hold.Start ? "" : text.Hold == Hold.End ? "e" : "c" }.Where(c => c.Length > 0));
        svg.Append(CultureInfo.InvariantCulture, $"<text{(classes.Length > 0 ? $" class=\"{classes}\"" : "")}{Data("wire", text.Wire ?? text.Return)}{Data("part", text.Part)} x=\"{N(text.At.X)}\" y=\"{N(text.At.Y)}\"{(text.Size == 16 ? "" : $" font-size=\"{N(text.Size)}\"")} textLength=\"{N(text.Width)}\" lengthAdjust=\"spacingAndGlyphs\">{Plain(text.Text)}</text>\n");
    }

    /// <summary>A wire by the id of its path: halo, outline, body, then the tracer.</summary>
    internal static void Wire(StringBuilder svg, string id, WireColour? colour, double squareMillimetres, string title)
    {
        var body = Insulation.Body(squareMillimetres);
        var classes = colour is { } c ? $"w c-{c.Base}{(c.Tracer is null ? "" : $" t-{c.Tracer}")}" : "w";
        svg.Append(CultureInfo.InvariantCulture, $"<g class=\"{classes}\"{Data("wire", title)}>{(title.Length > 0 ? $"<title>{Plain(title)}</title>" : "")}");
        Use("h", body + (2 * (Outline + Halo)));
        Use("o", body + (2 * Outline));
        Use("k", body);
        if (colour is { Tracer: not null } traced)
        {
            if (Insulation.NeedsEdge(traced))
            {
                Use("x", (body / 2) + 1.2);
            }

            Use("t", body / 2);
        }

        svg.Append("</g>\n");

        void Use(string kind, double width) => svg.Append(CultureInfo.InvariantCulture, $"<use class=\"{kind}\" href=\"#{id}\" stroke-width=\"{N(width)}\"/>");
    }

    private static void Body(StringBuilder svg, Scene scene)
    {
        foreach (var room in scene.Rooms)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"room\" {Box(room.Area)} rx=\"6\"/>\n");
        }

        for (var i = 0; i < scene.Strands.Length; i++)
        {
            var strand = scene.Strands[i];
            if (strand.Quiet)
            {
                svg.Append(CultureInfo.InvariantCulture, $"<g class=\"w q\"{Data("wire", strand.Wire)}><title>{Plain(strand.Wire)}</title><use class=\"k\" href=\"#{scene.Id}-w{i}\" stroke-width=\"2\"/></g>\n");
                continue;
            }

            Wire(svg, $"{scene.Id}-w{i.ToString(CultureInfo.InvariantCulture)}", strand.Colour, strand.Strong ? Insulation.Thickest : strand.SquareMillimetres, strand.Wire);
        }

        foreach (var cell in scene.Cells)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"{(cell.Outlined ? "cell" : "point")}{(cell.Quiet ? " q" : "")}\"{Data("part", cell.Part)} data-kind=\"{Plain(cell.Kind)}\" {Box(cell.Area)} rx=\"3\"><title>{Plain(cell.Part)}</title></rect>\n");
        }

        foreach (var light in scene.Lights)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"light\"{Data("part", light.Part)} data-sight=\"{Plain(light.Sight)}\" {Box(light.Area)} rx=\"{N(Math.Min(10, light.Area.Height / 2))}\"/>\n");
        }

        foreach (var stroke in scene.Strokes)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path class=\"s bar\" d=\"M{N(stroke.From.X)} {N(stroke.From.Y)}L{N(stroke.To.X)} {N(stroke.To.Y)}\"/>\n");
        }

        foreach (var dot in scene.Dots)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<circle class=\"f\" cx=\"{N(dot.X)}\" cy=\"{N(dot.Y)}\" r=\"5\"/>\n");
        }

        foreach (var sign in scene.Signs)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<use class=\"{(sign.Symbol == "arrow" ? "f" : "s")}{(sign.Return is null ? "" : " r")}\"{Data("wire", sign.Return)}{Data("part", sign.Part)} href=\"#{scene.Id}-{sign.Symbol}\" transform=\"translate({N(sign.Middle.X)} {N(sign.Middle.Y)}){(sign.Scale == 1 ? "" : $" scale({N(sign.Scale)})")}\"/>\n");
        }

        foreach (var light in scene.CaseLights)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<circle class=\"glow\"{Data("part", light.Part)} data-light=\"{Plain(light.Terminal)}\" data-means=\"{light.Means.ToString().ToLowerInvariant()}\" cx=\"{N(light.Middle.X)}\" cy=\"{N(light.Middle.Y)}\" r=\"4.5\"/>\n");
        }

        foreach (var text in scene.Letterings)
        {
            Text(svg, text);
        }

        foreach (var pin in scene.Pins)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"pin\"{Data("part", pin.Part)} data-terminal=\"{Plain(pin.Terminal)}\" {Box(pin.Area)}/>\n");
        }
    }

    private static string Box(Area area) => $"x=\"{N(area.X)}\" y=\"{N(area.Y)}\" width=\"{N(area.Width)}\" height=\"{N(area.Height)}\"";

    // Corners are rounded by as much as both of their runs allow.
    private static string Path(ImmutableArray<Spot> spots)
    {
        var path = new StringBuilder();
        path.Append(CultureInfo.InvariantCulture, $"M{N(spots[0].X)} {N(spots[0].Y)}");
        for (var i = 1; i < spots.Length - 1; i++)
        {
            var (before, at, after) = (spots[i - 1], spots[i], spots[i + 1]);
            var radius = Math.Min(Bend, Math.Min(Length(before, at), Length(at, after)) / 2);
            var (from, to) = (Toward(at, before, radius), Toward(at, after, radius));
            path.Append(CultureInfo.InvariantCulture, $"L{N(from.X)} {N(from.Y)}Q{N(at.X)} {N(at.Y)} {N(to.X)} {N(to.Y)}");
        }

        return path.Append(CultureInfo.InvariantCulture, $"L{N(spots[^1].X)} {N(spots[^1].Y)}").ToString();

        static double Length(Spot a, Spot b) => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y);

        static Spot Toward(Spot from, Spot to, double by) => Length(from, to) == 0 ? from : new(from.X + ((to.X - from.X) * by / Length(from, to)), from.Y + ((to.Y - from.Y) * by / Length(from, to)));
    }

    private static string Data(string what, string? name) => string.IsNullOrEmpty(name) ? "" : $" data-{what}=\"{Plain(name)}\"";

    internal static string Plain(string text) => SecurityElement.Escape(text);
}
