using Loomwright.Parts;

namespace Loomwright.Simulation;

/// <summary>How much light a lamp gives, and what a person calls it.</summary>
public static class Light
{
    /// <summary>Light of a filament goes as this power of the voltage (3.4 by the lamp standards; measured 1.6 to 3.5).</summary>
    public const double FilamentExponent = 3.4;

    /// <summary>Below this share of its full light a lamp is called dark …</summary>
    public const double DarkBelow = 0.01;

    /// <summary>… and below this one dim.</summary>
    public const double DimBelow = 0.8;

    /// <summary>A lamp whose light falls below this share of what it was a moment ago is seen to flash.</summary>
    public const double FlashesBelow = 0.5;

    /// <summary>Light in units of its own: only ratios of the same lamp mean anything.</summary>
    /// <param name="law">How light follows the electricity.</param>
    /// <param name="squareVolts">Mean square of the voltage across it: at a share s of the time a filament sees V·√s.</param>
    /// <param name="amps">Mean current through it, positive forward.</param>
    public static double Of(LightLaw law, double squareVolts, double amps) =>
        law == LightLaw.Filament ? Math.Pow(squareVolts, FilamentExponent / 2) : Math.Max(amps, 0);

    /// <summary>By which power of the volts light goes near 12 V.</summary>
    public static double Power(LightLaw law, Curve curve)
    {
        const double volts = 12;
        return law == LightLaw.Filament ? FilamentExponent : curve.At(volts) is { Amps: > 0 } at ? at.Siemens * volts / at.Amps : 0;
    }

    /// <summary>What a person says of a share of the full light.</summary>
    public static Symbol Called(double share) => share < DarkBelow ? Symbol.Dark : share < DimBelow ? Symbol.Dim : Symbol.Lit;

    /// <summary>What a person says who sees both phases of what blinks: flashing when it is dark between, or has less than half its light (judgement).</summary>
    public static Symbol Called(double share, double shareBetween)
    {
        var (more, less) = (Math.Max(share, shareBetween), Math.Min(share, shareBetween));
        return Called(more) == Symbol.Dark ? Symbol.Dark
            : Called(less) == Symbol.Dark || less < FlashesBelow * more ? Symbol.Flashing
            : Called(less);
    }

    /// <summary>The same, told fast or slow by how often it goes: a flasher gives 60 to 120 a minute.</summary>
    public static Symbol Called(double share, double shareBetween, double? perMinute) => Called(share, shareBetween) switch
    {
        Symbol.Flashing when perMinute > 120 => Symbol.FlashingFast,
        Symbol.Flashing when perMinute < 60 => Symbol.FlashingSlowly,
        var called => called,
    };
}
