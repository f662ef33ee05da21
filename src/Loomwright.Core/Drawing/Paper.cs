using System.Globalization;

namespace Loomwright.Drawing;

/// <summary>The sheet a drawing goes on, at 6.4 pixels to the millimetre. Drawings are never scaled down to fit: what is too large for A4 takes A3, then as much as it needs.</summary>
internal readonly record struct Paper(string Name, double Width, double Height)
{
    public const double PixelsPerMillimetre = 6.4;
    public const double Footer = 84;
    private const double Margin = 45;

    public static double Left => Margin;

    public static double Top => Margin + 52;

    public double BodyWidth => Width - (2 * Margin);

    public double BodyHeight => Height - Top - Footer - Margin;

    /// <summary>The smallest paper with room for a body of that size.</summary>
    public static Paper For(double width, double height)
    {
        foreach (var paper in new[] { A4, A3 })
        {
            if (width <= paper.BodyWidth && height <= paper.BodyHeight)
            {
                return paper;
            }
        }

        var (w, h) = (Math.Max(A3.Width, Math.Ceiling(width) + (2 * Margin)), Math.Max(A3.Height, Math.Ceiling(height) + A3.Height - A3.BodyHeight));
        return new Paper(string.Create(CultureInfo.InvariantCulture, $"{w / PixelsPerMillimetre:0} × {h / PixelsPerMillimetre:0} mm"), w, h);
    }

    public static Paper A4 => new("A4", 297 * PixelsPerMillimetre, 210 * PixelsPerMillimetre);

    public static Paper A3 => new("A3", 420 * PixelsPerMillimetre, 297 * PixelsPerMillimetre);
}
