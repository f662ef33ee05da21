using System.Globalization;

namespace Loomwright.Quantities;

/// <summary>Volts: a potential at a point, or the voltage between two points in stated order.</summary>
public readonly record struct Voltage(double Volts)
{
    /// <summary>Two places, as on a hand meter: <c>12.60 V</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Rounded.Clean(Volts, 2):0.00} V");
}

/// <summary>Amps, positive into a part at its first terminal.</summary>
public readonly record struct Current(double Amps)
{
    /// <summary>As printed on a fuse: <c>20 A</c>, <c>7.5 A</c>.</summary>
    public string Printed => string.Create(CultureInfo.InvariantCulture, $"{Amps:0.##} A");

    /// <summary>Two places; three below 0.1 A; milliamps below 10 mA.</summary>
    public override string ToString()
    {
        var size = Math.Abs(Amps);
        return size < 0.00995
            ? string.Create(CultureInfo.InvariantCulture, $"{Rounded.Clean(Amps * 1000, 1):0.#} mA")
            : size < 0.0995
                ? string.Create(CultureInfo.InvariantCulture, $"{Amps:0.000} A")
                : string.Create(CultureInfo.InvariantCulture, $"{Amps:0.00} A");
    }
}

/// <summary>Ohms.</summary>
public readonly record struct Resistance(double Ohms)
{
    /// <summary>Three significant figures in mΩ, Ω, kΩ or MΩ.</summary>
    public override string ToString()
    {
        var (scaled, unit) = Math.Abs(Ohms) switch
        {
            >= 1e6 => (Ohms / 1e6, "MΩ"),
            >= 1e3 => (Ohms / 1e3, "kΩ"),
            >= 1 => (Ohms, "Ω"),
            0 => (0, "Ω"),
            _ => (Ohms * 1e3, "mΩ"),
        };
        return string.Create(CultureInfo.InvariantCulture, $"{scaled:G3} {unit}");
    }
}

/// <summary>Watts.</summary>
public readonly record struct Power(double Watts)
{
    /// <summary>One place at the most: <c>21 W</c>, <c>0.4 W</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Watts:0.#} W");
}

/// <summary>Metres along the wire, one way.</summary>
public readonly record struct Length(double Metres)
{
    /// <summary>Two places: <c>1.10 m</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Metres:0.00} m");
}

/// <summary>Nominal conductor cross-section in mm². A name for a table row, not a geometric area.</summary>
public readonly record struct CrossSection(double SquareMillimetres)
{
    /// <summary>As written on the reel: <c>0.75 mm²</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{SquareMillimetres:0.##} mm²");
}

/// <summary>Degrees Celsius.</summary>
public readonly record struct Temperature(double Celsius)
{
    /// <summary>Whole degrees: <c>35 °C</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Celsius:0} °C");
}

/// <summary>A part 0…1 of a whole.</summary>
public readonly record struct Share(double OfOne)
{
    /// <summary>One place at the most: <c>3 %</c>, <c>0.9 %</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{OfOne * 100:0.#} %");
}

internal static class Rounded
{
    /// <summary>Rounds to the places shown and turns −0 into 0, so that no screen says "-0.00 V".</summary>
    public static double Clean(double value, int places) => Math.Round(value, places) + 0.0;
}
