using System.Globalization;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A quantity a kind asks for, with the value taken when it is not given; the published text and the reading come from the one definition.</summary>
/// <param name="Default">In SI units; null when there is none of general use.</param>
internal sealed record Amount(string Key, string Meaning, Unit Unit, double Least, double Most, double? Default = null)
{
    /// <summary>As published; the default is added to its meaning.</summary>
    public Parameter Parameter => new(Key, Default is { } value ? $"{Meaning} Default {Shown(value, Unit)}." : Meaning, new Form.Quantity(Unit, Least, Most));

    /// <summary>The value given, kept inside its bounds (outside them the reader has already complained), or the default, or null.</summary>
    public double? Given(Settings settings) => settings.Number(Key) is { } number && double.IsFinite(number) ? Math.Clamp(number, Least, Most) : Default;

    /// <summary>The value of an amount that has a default.</summary>
    public double Of(Settings settings) => Given(settings) ?? Least;

    /// <summary>A figure as one writes it in a file: <c>7 A</c>.</summary>
    /// <param name="value">In SI units.</param>
    /// <param name="unit">Of what.</param>
    public static string Shown(double value, Unit unit) => unit switch
    {
        Unit.Volt => Plain(value, "V"),
        Unit.Amp when value < 0.001 => Plain(value * 1e6, "µA"),
        Unit.Amp when value < 1 => Plain(value * 1000, "mA"),
        Unit.Amp => Plain(value, "A"),
        Unit.Watt => Plain(value, "W"),
        Unit.Metre => Plain(value * 1000, "mm"),
        Unit.Ohm => new Resistance(value).ToString(),
        Unit.Second => Plain(value * 1000, "ms"),
        Unit.AmpHour => Plain(value, "Ah"),
        Unit.Share => Plain(value * 100, "%"),
        _ => Plain(value, ""),
    };

    private static string Plain(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value:0.###} {unit}").TrimEnd();
}
