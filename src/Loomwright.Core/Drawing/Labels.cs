using System.Globalization;
using Loomwright.Design;

namespace Loomwright.Drawing;

/// <summary>The few words on a wire.</summary>
internal static class Labels
{
    /// <summary><c>GN/WH 0.5</c>: colour letters and mm²; a question mark for an unknown colour.</summary>
    public static string Of(Wire wire) =>
        string.Create(CultureInfo.InvariantCulture, $"{wire.Colour?.ToString() ?? "?"} {wire.Size.SquareMillimetres:0.##}");
}
