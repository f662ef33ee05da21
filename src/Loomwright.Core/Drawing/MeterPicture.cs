using System.Text;

namespace Loomwright.Drawing;

/// <summary>A hand meter as a small picture: where its dial points and which sockets the leads are in. Takes the colour of the text around it.</summary>
public static class MeterPicture
{
    /// <summary>Width and height in drawing units.</summary>
    public const string ViewBox = "0 0 96 112";

    private const double SocketTop = 92;

    private static readonly (string Sign, double X, double Y, bool IsDirect)[] Places = [("V", 14, 56, true), ("Ω", 48, 34, false), ("A", 82, 56, true)];

    private static readonly (string Socket, double X)[] Sockets = [("10 A", 20), ("COM", 48), ("V Ω", 76)];

    /// <summary>What is inside the picture's <c>svg</c> or <c>symbol</c>.</summary>
    /// <param name="sign">What the dial points at: <c>V</c>, <c>Ω</c> or <c>A</c>.</param>
    /// <param name="red">The socket of the red lead, as printed on the meter.</param>
    /// <param name="black">The socket of the black lead.</param>
    public static string Inside(string sign, string red, string black)
    {
        var svg = new StringBuilder("<g fill=\"none\" stroke=\"currentColor\" stroke-width=\"2\"><rect x=\"2\" y=\"2\" width=\"92\" height=\"108\" rx=\"8\"/><rect x=\"16\" y=\"8\" width=\"64\" height=\"14\" rx=\"2\"/><circle cx=\"48\" cy=\"54\" r=\"14\"/></g>");
        foreach (var (at, x, y, isDirect) in Places)
        {
            var isOn = at == sign;
            Say(svg, x, y, isOn ? 15 : 11, isOn, at);
            if (isDirect)
            {
                svg.Append(FormattableString.Invariant($"<path d=\"M{x - 6} {y + 4}h12m-12 3h3m1.5 0h3m1.5 0h3\" stroke=\"currentColor\" fill=\"none\"/>"));
            }

            if (isOn)
            {
                var (dx, dy) = at == "Ω" ? (0, -12) : at == "V" ? (-12, 0) : (12, 0);
                svg.Append(FormattableString.Invariant($"<path d=\"M48 54l{dx} {dy}\" stroke=\"currentColor\" stroke-width=\"4\" stroke-linecap=\"round\"/>"));
            }
        }

        foreach (var (socket, x) in Sockets)
        {
            Say(svg, x, SocketTop - 10, 9, socket == red || socket == black, socket);
            var fill = socket == red ? "#c62828" : socket == black ? "#111" : "none";
            svg.Append(FormattableString.Invariant($"<circle cx=\"{x}\" cy=\"{SocketTop}\" r=\"5.5\" fill=\"{fill}\" stroke=\"currentColor\" stroke-width=\"1.5\"/>"));
            Say(svg, x, SocketTop + 14.5, 9, false, socket == red ? "red" : socket == black ? "black" : "");
        }

        return svg.ToString();
    }

    /// <summary>The picture in words, for who cannot see it.</summary>
    public static string Words(string sign, string red, string black) => $"Meter: dial on {sign}, red plug in {red}, black plug in {black}";

    private static void Say(StringBuilder svg, double x, double y, double size, bool isBold, string text)
    {
        if (text.Length > 0)
        {
            svg.Append(FormattableString.Invariant($"<text x=\"{x}\" y=\"{y}\" font-size=\"{size}\" text-anchor=\"middle\" fill=\"currentColor\"{(isBold ? " font-weight=\"700\"" : "")}>{text}</text>"));
        }
    }
}
