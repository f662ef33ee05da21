using System.Globalization;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>What the ends of a wire add to it.</summary>
public static class Termination
{
    /// <summary>A good crimp, typical upper value (IEC 60352-2 practice, from memory).</summary>
    public static Resistance Crimp { get; } = new(0.0005);

    // Whole connection, aged, by terminal size (SAE/USCAR-2, from memory): smallest size it holds from, ohms.
    private static readonly (double FromMillimetres, double Ohms)[] Contacts = [(6.3, 0.0015), (2.8, 0.005), (1.5, 0.010), (0, 0.020)];

    /// <summary>
    /// One end as the owner names it. A size in mm (<c>bullet 4 mm</c>, <c>blade 6.3 mm</c>) makes it a contact of that size,
    /// crimp included; a ring, a splice, a pin of no stated size, or null is a crimp.
    /// </summary>
    public static Resistance Of(string? end) =>
        end is null || end.Contains("ring", StringComparison.OrdinalIgnoreCase) || Millimetres(end) is not { } millimetres
            ? Crimp
            : Contact(millimetres);

    /// <summary>A whole connection of a terminal of that size, aged, both crimps included.</summary>
    public static Resistance Contact(double millimetres) => new(Contacts.First(c => millimetres >= c.FromMillimetres).Ohms);

    /// <summary>A wire with both its ends, the conductor at that temperature.</summary>
    public static Resistance Whole(Wire wire, Temperature temperature) =>
        new(Conductor.Resistance(wire.Size, wire.Length, temperature).Ohms + Of(wire.FromEnd).Ohms + Of(wire.ToEnd).Ohms + wire.Extra.Ohms);

    private static double? Millimetres(string end)
    {
        var words = end.Replace("mm", " mm", StringComparison.OrdinalIgnoreCase).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var i = 1; i < words.Length; i++)
        {
            if (words[i].Equals("mm", StringComparison.OrdinalIgnoreCase)
                && double.TryParse(words[i - 1].Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var millimetres))
            {
                return millimetres;
            }
        }

        return null;
    }
}
