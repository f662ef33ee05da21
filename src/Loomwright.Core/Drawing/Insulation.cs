using Loomwright.Design;

namespace Loomwright.Drawing;

/// <summary>How insulation looks. The tints are our own, spread in lightness so that a grey print keeps them apart as far as it can.</summary>
internal static class Insulation
{
    /// <summary>Colour letters, the word, the tint by day and by night, and the lightness L* (CIE) of the first.</summary>
    public static readonly (string Letters, string Word, string Day, string Dim, int Lightness)[] Tints =
    [
        ("BK", "black", "#1a1a1a", "#0a0a0a", 9),
        ("BN", "brown", "#6b3f1b", "#8f5a2c", 31),
        ("VT", "violet", "#783aa2", "#a468cf", 37),
        ("BU", "blue", "#2062c6", "#4486ee", 43),
        ("RD", "red", "#d62a26", "#e5433c", 47),
        ("GN", "green", "#22963f", "#35b257", 55),
        ("GY", "grey", "#90969c", "#9ca3aa", 62),
        ("GD", "gold", "#bf9730", "#d3ac3c", 65),
        ("OG", "orange", "#f58518", "#f8932f", 67),
        ("TQ", "turquoise", "#2fb9b4", "#3fc8c3", 68),
        ("PK", "pink", "#f6a4c0", "#f8b0c9", 76),
        ("SR", "silver", "#c6ced4", "#d0d8dd", 82),
        ("YE", "yellow", "#f9d91c", "#fbe04a", 87),
        ("WH", "white", "#ffffff", "#f7f7f5", 100),
    ];

    /// <summary>A cross-section of the widest step, mm².</summary>
    public const double Thickest = 16;

    /// <summary>How wide the insulation is drawn: four steps by cross-section.</summary>
    public static double Body(double squareMillimetres) => squareMillimetres switch
    {
        < 1.25 => 4.2,
        < 3.5 => 4.8,
        < 9 => 5.4,
        _ => 6,
    };

    /// <summary>Whether the tracer needs a dark edge to be seen beside its ground colour in grey.</summary>
    public static bool NeedsEdge(WireColour colour) => colour.Tracer is { } tracer && Math.Abs(Lightness(colour.Base) - Lightness(tracer)) < 25;

    private static int Lightness(string letters) => Tints.First(t => t.Letters == letters).Lightness;
}
