using System.Collections.Immutable;

namespace Loomwright.Diagnosis;

/// <summary>How the battery in the workshop stands beside the one written down: all answers of one search have the same.</summary>
internal static class Battery
{
    /// <summary>Shares of its rest voltage that are thought of, alike likely: 11.8 to 13 V where 12.8 V are written (judgement).</summary>
    public static readonly ImmutableArray<double> Shares = [0.92, 0.94, 0.96, 0.98, 1.0, 1.02];

    // Light goes with this power of the volts; below this share of the full light a lamp is told to be dim; by that much lamps differ.
    private const double LightPower = 3.4, DimBelow = 0.8, LampsDiffer = 0.1;

    /// <summary>How likely a lamp that is lit with the battery as written is dim with this one, 0…0.9: not every lamp follows the volts.</summary>
    public static double Dims(double share) => 0.01 + (0.85 * Math.Clamp(((DimBelow / Math.Pow(share, LightPower)) - 1 + LampsDiffer) / (2 * LampsDiffer), 0, 1));
}
