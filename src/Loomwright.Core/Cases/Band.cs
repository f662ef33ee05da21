using Loomwright.Quantities;

namespace Loomwright.Cases;

/// <summary>Between which volts, amps or share of the full light something was: <c>9 V to 10 V</c>, <c>above 7 A</c>, <c>below 60 % light</c>.</summary>
internal readonly record struct Band(Unit Unit, double Least, double Most)
{
    private static readonly Unit[] Known = [Unit.Volt, Unit.Amp, Unit.Share];

    /// <summary>The band, or null when the text is none.</summary>
    public static Band? Read(string text)
    {
        if (text.Split(' ', 2) is ["above" or "below", var bound])
        {
            return Bound(bound) is not { } only ? null
                : text.StartsWith("above", StringComparison.Ordinal) ? new Band(only.Unit, only.Si, double.PositiveInfinity)
                : new Band(only.Unit, double.NegativeInfinity, only.Si);
        }

        return text.Split(" to ") is [var least, var most] && Bound(least) is { } low && Bound(most) is { } high && low.Unit == high.Unit
            ? new Band(low.Unit, low.Si, high.Si)
            : null;
    }

    /// <summary>Whether a value in the band's unit lies in it; what could not be read does not.</summary>
    public bool Holds(double? value) => value >= Least && value <= Most;

    private static (Unit Unit, double Si)? Bound(string text)
    {
        const string light = " light";
        var typed = text.EndsWith(light, StringComparison.Ordinal) ? text[..^light.Length] : text;
        foreach (var unit in Known)
        {
            if (Typed.Read(typed, unit) is Typed.Quantity { Bare: false } quantity)
            {
                return (unit, quantity.Si);
            }
        }

        return null;
    }
}
