namespace Loomwright.Sizing;

/// <summary>
/// One wire in free air, a bundle of it, and thin air: laws fitted here through the points of the curves of
/// FAA AC 43.13-1B CHG 1 that its examples use. Within 5 % of each point; few of those were read, the rest are from memory.
/// </summary>
public static class FreeAir
{
    private const double Scale = 2.527;
    private const double AreaPower = 0.57;

    // One wire alone would come out a little above 1.
    private const double BundleScale = 1.06;
    private const double BundlePower = -0.364;

    private const double AltitudeScale = 1.086e-4;
    private const double AltitudePower = 0.771;

    /// <summary>Amps that warm a conductor by so many kelvin above the air.</summary>
    public static double Amps(double squareMillimetres, double riseKelvin) => Scale * Math.Pow(squareMillimetres, AreaPower) * Math.Sqrt(riseKelvin);

    /// <summary>The share left in a bundle.</summary>
    /// <param name="wires">Wires in it.</param>
    /// <param name="loading">How much of what they could carry they do carry, 0…1.</param>
    public static double BundleShare(int wires, double loading) => Math.Min(1, BundleScale * Math.Pow(Math.Max(wires * loading, 1), BundlePower));

    /// <summary>The share left at an altitude.</summary>
    public static double AltitudeShare(double metres) => 1 - (AltitudeScale * Math.Pow(Math.Max(metres, 0), AltitudePower));
}
