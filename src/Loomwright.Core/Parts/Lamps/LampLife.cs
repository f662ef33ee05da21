using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>How long a headlamp bulb lasts at its test voltage: IEC 60810, read in a public reproduction of its table.</summary>
/// <param name="Category">As in <see cref="LampCategory"/>.</param>
/// <param name="B3Hours">After these 3 % have failed.</param>
/// <param name="TcHours">After these 63.2 % have failed.</param>
internal sealed record LampLife(string Category, double B3Hours, double TcHours)
{
    /// <summary>Life goes with this power of the volts, turned down (encyclopaedia article on incandescent lamps; it prints 12 to 16).</summary>
    public const double Exponent = 13;

    public static ImmutableArray<LampLife> All { get; } =
    [
        new("H1", 150, 400),
        new("H3", 150, 400),
        new("H4 main", 125, 250),
        new("H4 dipped", 250, 500),
        new("H7", 300, 500),
        new("H8", 400, 800),
        new("H9", 250, 500),
        new("H11", 350, 600),
    ];

    /// <summary>The row of a category, or null.</summary>
    public static LampLife? Of(string category) => All.FirstOrDefault(l => Names.Same(l.Category, category));

    /// <summary>The share of its life left at other volts than those it is tested at.</summary>
    public static double Share(double volts, double testVolts) => Math.Pow(volts / testVolts, -Exponent);
}
