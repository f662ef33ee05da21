namespace Loomwright.Parts;

/// <summary>Annealed copper, from memory after IEC 60028: other sources print 1.68e-8 to 1.72e-8 Ω·m and 0.0039 to 0.00404 per kelvin.</summary>
internal static class Copper
{
    /// <summary>Resistivity at 20 °C, Ω·mm²/m.</summary>
    public const double Resistivity = 0.017241;

    /// <summary>Temperature coefficient at 20 °C, per kelvin.</summary>
    public const double PerKelvin = 0.00393;

    /// <summary>Where its resistance would end on a straight line, degrees below 0 °C (FAA AC 43.13-1B par. 11-68: 254.5/(234.5 + T)).</summary>
    public const double ZeroCelsius = 234.5;

    /// <summary>Heat it stores, J/K for a metre of 1 mm² (IEC 60949, from memory).</summary>
    public const double JoulesPerKelvin = 3.45;
}
