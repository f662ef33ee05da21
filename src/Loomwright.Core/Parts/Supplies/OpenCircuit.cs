using System.Collections.Immutable;

namespace Loomwright.Parts;

/// <summary>Voltage of a rested 12 V battery against its charge.</summary>
internal static class OpenCircuit
{
    // Flooded lead-acid, 26.7 °C: 5 % table of a public battery guide.
    private static readonly ImmutableArray<(double Charge, double Volts)> LeadAcid =
    [
        (0, 11.89), (0.05, 11.92), (0.10, 11.96), (0.20, 12.03), (0.25, 12.06), (0.35, 12.13), (0.40, 12.17), (0.50, 12.24),
        (0.55, 12.28), (0.65, 12.37), (0.70, 12.41), (0.75, 12.45), (0.80, 12.49), (0.85, 12.53), (0.95, 12.62), (1, 12.66),
    ];

    // Glass mat: from memory.
    private static readonly ImmutableArray<(double Charge, double Volts)> Agm = [(0, 11.8), (0.25, 12.0), (0.50, 12.3), (0.75, 12.6), (1, 12.8)];

    // Lithium iron phosphate, four cells: judgement between three public charts that contradict each other; ±30 % of charge on the flat part.
    private static readonly ImmutableArray<(double Charge, double Volts)> Lithium =
        [(0, 10.5), (0.05, 12.0), (0.10, 12.5), (0.20, 12.9), (0.50, 13.15), (0.80, 13.3), (0.95, 13.5), (1, 13.6)];

    /// <summary>Straight lines between the points of the table.</summary>
    /// <param name="chemistry">lead-acid, agm or lifepo4; anything else is taken as lead-acid.</param>
    /// <param name="charge">0…1; outside, the nearer end.</param>
    public static double Volts(string chemistry, double charge)
    {
        var table = Table(chemistry);
        for (var i = 1; i < table.Length; i++)
        {
            var (low, high) = (table[i - 1], table[i]);
            if (charge <= high.Charge)
            {
                var share = Math.Max(0, (charge - low.Charge) / (high.Charge - low.Charge));
                return low.Volts + (share * (high.Volts - low.Volts));
            }
        }

        return table[^1].Volts;
    }

    /// <summary>The charge that a resting voltage stands for: <see cref="Volts"/> read backwards, 0…1.</summary>
    /// <param name="chemistry">lead-acid, agm or lifepo4; anything else is taken as lead-acid.</param>
    /// <param name="volts">Measured at rest; outside the table, its nearer end.</param>
    public static double Charge(string chemistry, double volts)
    {
        var table = Table(chemistry);
        for (var i = 1; i < table.Length; i++)
        {
            var (low, high) = (table[i - 1], table[i]);
            if (volts <= high.Volts)
            {
                var share = Math.Max(0, (volts - low.Volts) / (high.Volts - low.Volts));
                return low.Charge + (share * (high.Charge - low.Charge));
            }
        }

        return table[^1].Charge;
    }

    private static ImmutableArray<(double Charge, double Volts)> Table(string chemistry) => chemistry switch { "agm" => Agm, "lifepo4" => Lithium, _ => LeadAcid };
}
