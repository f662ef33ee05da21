using System.Globalization;

namespace Loomwright.Web.Picture;

/// <summary>Where a list opens over the picture.</summary>
internal static class Place
{
    /// <summary>At a point of the canvas in pixels; the style sheet keeps it on the canvas.</summary>
    public static string At(double x, double y) => string.Create(CultureInfo.InvariantCulture, $"--x:{x:0}px;--y:{y:0}px");
}
