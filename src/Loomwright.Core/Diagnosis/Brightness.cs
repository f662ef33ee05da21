using System.Collections.Immutable;
using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>
/// Whether a lamp that is not dark is told to be lit or dim: by its light in the design, the battery that stands there, the
/// contacts that all current goes through, and the lamp's own watts and contacts, which are the same in every look.
/// </summary>
internal static class Brightness
{
    /// <summary>What a lamp's own watts and contacts make of its light, alike likely (judgement).</summary>
    public static readonly ImmutableArray<double> Own = [0.92, 1.0, 1.08];

    // What each ampere of the whole bike loses on its way there, as a share of the battery: 40 mΩ at 12.5 V (judgement).
    private const double LostPerAmp = 0.0032;

    // A share of the full light on either side of the border within which it is called now this, now that (judgement).
    private const double Unclear = 0.04, UnclearOfAny = 0.12;

    /// <summary>What is left of the light that a lamp has in the design.</summary>
    /// <param name="lamp">The lamp.</param>
    /// <param name="battery">Share of the battery's rest voltage.</param>
    /// <param name="amps">What the supply delivers.</param>
    public static double Left(Observable lamp, double battery, double amps) => Math.Pow(Math.Max(0.1, battery - (LostPerAmp * Math.Abs(amps))), lamp.LightPower ?? 0);

    /// <summary>How likely a lamp with that share of its full light is a dim one, 0…1.</summary>
    public static double Dim(double light, double unclear = Unclear) => Math.Clamp(0.5 + ((Light.DimBelow - light) / (2 * unclear)), 0, 1);

    /// <summary>The same where nothing is known of the lamp itself.</summary>
    public static double DimOfAny(double light) => Dim(light, UnclearOfAny);
}
