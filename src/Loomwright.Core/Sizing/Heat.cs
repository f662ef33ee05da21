using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.Sizing;

/// <summary>
/// How warm a conductor gets (docs/models/wire-heat.md): what it gives off grows with its rise over the air, what it takes up is
/// I²R with R at its insulation's class, its own copper stores the rest. No heat is led away along it and its insulation stores none.
/// </summary>
/// <param name="Air">Around it.</param>
/// <param name="By">Whose figure tells what it gives off.</param>
/// <param name="KelvinPerSquareAmp">Rise over current squared, settled.</param>
/// <param name="TimeConstantSeconds">63 % of the way after a change.</param>
public sealed record Heat(Temperature Air, string By, double KelvinPerSquareAmp, double TimeConstantSeconds)
{
    /// <summary>A wire of a size: by the rule chosen where it names its air and its conductor, else by metric practice, else in free air.</summary>
    public static Heat Of(CrossSection size, Surroundings around, AmpacityRule rule)
    {
        var (by, kelvin, amps) = new[] { rule, AmpacityRules.Usual }
            .Select(r => r.For(size, around) is { Heated: { } heated } ? (r.Name, heated.Kelvin, heated.Amps) : ((string, double, double)?)null)
            .FirstOrDefault(h => h is not null) ?? InFreeAir(size, around);
        var conductor = Conductor.For(size);
        var ohms = conductor.Of(new Length(1), around.Insulation).Ohms;
        var perSquareAmp = kelvin / (amps * amps);
        return new Heat(around.Ambient, by, perSquareAmp, Copper.JoulesPerKelvin * Copper.Resistivity / conductor.Row.OhmsPerMetre * perSquareAmp / ohms);
    }

    /// <summary>After a long time at a current.</summary>
    public Temperature Settled(double amps) => new(Air.Celsius + (KelvinPerSquareAmp * amps * amps));

    /// <summary>After a stretch at one current, from the temperature it had.</summary>
    public Temperature After(Temperature start, double amps, double seconds)
    {
        var end = Settled(amps).Celsius;
        return new(end + ((start.Celsius - end) * Math.Exp(-seconds / TimeConstantSeconds)));
    }

    /// <summary>At the end of each stretch of current, one after the other, from the air's temperature.</summary>
    public IEnumerable<Temperature> Over(IEnumerable<(double Amps, double Seconds)> stretches)
    {
        var now = Air;
        foreach (var (amps, seconds) in stretches)
        {
            yield return now = After(now, amps, seconds);
        }
    }

    /// <summary>FAA AC 43.13-1B par. 11-68, on the careful side: the rise as the square root of the share of the current the table allows.</summary>
    public static Temperature Careful(Temperature air, Temperature rated, double share) => new(air.Celsius + ((rated.Celsius - air.Celsius) * Math.Sqrt(share)));

    /// <summary>k of I²t = k²·A² in A·√s/mm² for copper heated from one temperature to another with nothing given off: 115 from 70 to 160 °C.</summary>
    public static double Adiabatic(Temperature from, Temperature to) =>
        Math.Sqrt(Copper.JoulesPerKelvin * (Copper.ZeroCelsius + 20) / Copper.Resistivity * Math.Log((to.Celsius + Copper.ZeroCelsius) / (from.Celsius + Copper.ZeroCelsius)));

    private static (string By, double Kelvin, double Amps) InFreeAir(CrossSection size, Surroundings around)
    {
        const double RiseKelvin = 50;
        return ("FAA AC 43.13-1B, free air", RiseKelvin, FreeAir.Amps(size.SquareMillimetres, RiseKelvin) * FreeAir.BundleShare(around.Bundle, 1));
    }
}
