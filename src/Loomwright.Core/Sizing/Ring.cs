using System.Collections.Immutable;
using System.Globalization;

namespace Loomwright.Sizing;

/// <summary>A ring terminal: the bolt it is made for, and how tight its screw or nut goes. Read in a public generic table of rings for 2 and 5.5 mm², M4 to M8; for terminal screws, not for bolts of the engine.</summary>
/// <param name="WireSquareMillimetres">The wire its barrel takes.</param>
/// <param name="BoltMillimetres">4 for M4.</param>
/// <param name="NewtonMetres">Tightening torque.</param>
public sealed record Ring(double WireSquareMillimetres, int BoltMillimetres, double NewtonMetres)
{
    /// <summary>From thin to thick.</summary>
    public static ImmutableArray<Ring> All { get; } =
        [new(2, 4, 1.2), new(2, 5, 2.0), new(2, 6, 2.5), new(2, 8, 6.0), new(5.5, 4, 1.2), new(5.5, 5, 2.0), new(5.5, 6, 2.5), new(5.5, 8, 6.0)];

    /// <summary>The bolt of an end called <c>ring M6</c>; null when it is no ring or names no bolt.</summary>
    public static int? BoltOf(string? end)
    {
        if (end is null || !end.Contains("ring", StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        var bolt = end.Split(' ').FirstOrDefault(w => w.Length > 1 && w[0] is 'M' or 'm' && char.IsAsciiDigit(w[1]));
        return int.TryParse(bolt?[1..], NumberStyles.None, CultureInfo.InvariantCulture, out var millimetres) ? millimetres : null;
    }

    /// <summary>How tight the screw of that bolt goes, the same for every wire listed; null for one the table does not have.</summary>
    public static double? Torque(int boltMillimetres) => All.FirstOrDefault(r => r.BoltMillimetres == boltMillimetres)?.NewtonMetres;
}
