using System.Globalization;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A quantity a kind asks for, with the value taken when it is not given; the published text and the reading come from the one definition.</summary>
/// <param name="Default">In SI units; null when there is none of general use.</param>
internal sealed record Amount(string Key, string Meaning, Unit Unit, double Least, double Most, double? Default = null)
{
    /// <summary>As published; the default is added to its meaning.</summary>
    public Parameter Parameter => new(Key, Default is { } value ? $"{Meaning} Default {Shown(value)}." : Meaning, new Form.Quantity(Unit, Least, Most));

    /// <summary>The value given, kept inside its bounds (outside them the reader has already complained), or the default, or null.</summary>
    public double? Given(Settings settings) => settings.Number(Key) is { } number && double.IsFinite(number) ? Math.Clamp(number, Least, Most) : Default;

    /// <summary>The value of an amount that has a default.</summary>
    public double Of(Settings settings) => Given(settings) ?? Least;

    private string Shown(double value) => Unit switch
    {
        Unit.Volt => new Voltage(value).ToString(),
        Unit.Amp => new Current(value).ToString(),
        Unit.Ohm => new Resistance(value).ToString(),
        Unit.Watt => new Power(value).ToString(),
        Unit.Second => string.Create(CultureInfo.InvariantCulture, $"{value * 1000:0.#} ms"),
        Unit.AmpHour => string.Create(CultureInfo.InvariantCulture, $"{value:0.#} Ah"),
        Unit.Share => string.Create(CultureInfo.InvariantCulture, $"{value * 100:0.#} %"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{value:0.###}"),
    };
}
