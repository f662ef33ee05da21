using System.Collections.Immutable;

namespace Loomwright.Diagnosis;

/// <summary>How the battery in the workshop stands beside the one written down: all answers of one search have the same.</summary>
internal static class Battery
{
    /// <summary>Shares of its rest voltage that are thought of, alike likely: 11.8 to 13 V where 12.8 V are written (judgement).</summary>
    public static readonly ImmutableArray<double> Shares = [0.92, 0.94, 0.96, 0.98, 1.0, 1.02];

    /// <summary>Place of the one that stands as written.</summary>
    public const int AsWritten = 4;

    /// <summary>For each of them how likely a lamp that would be lit is a dim one there wherever it is looked at: its own watts and wires count too.</summary>
    public static readonly ImmutableArray<double> Dims = [.. Shares.Select(DimsAt)];

    /// <summary>How likely such a lamp is now dim, now lit, by what else draws current (judgement).</summary>
    public const double NowAndThen = 0.25;

    // Light goes with this power of the volts; below this share of the full light a lamp is told to be dim; by that much lamps differ with their wires.
    private const double LightPower = 3.4, DimBelow = 0.8, LampsDiffer = 0.2;

    private static double DimsAt(double share) => 0.02 + (0.65 * Math.Clamp(((DimBelow / Math.Pow(share, LightPower)) - 1 + LampsDiffer) / (2 * LampsDiffer), 0, 1));
}
