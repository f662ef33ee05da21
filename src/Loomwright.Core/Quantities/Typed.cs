using System.Globalization;

namespace Loomwright.Quantities;

/// <summary>
/// What a person typed for a quantity, read once and everywhere in the same way: <c>12.4</c> and <c>12,4</c> alike, no thousands
/// separators, the unit with or without a blank before it.
/// </summary>
public abstract record Typed
{
    private Typed()
    {
    }

    /// <summary>Read.</summary>
    /// <param name="Si">The value in the unit's base (<see cref="Unit"/>); a share as 0…1.</param>
    /// <param name="Bare">True when no unit was written and the documented one was taken.</param>
    public sealed record Quantity(double Si, bool Bare) : Typed;

    /// <summary>Not read.</summary>
    /// <param name="What">What is wrong with it.</param>
    /// <param name="Cure">What to write instead.</param>
    public sealed record Unreadable(string What, string Cure) : Typed;

    /// <summary>Reads <paramref name="text"/> as a quantity of <paramref name="unit"/>. Never throws.</summary>
    public static Typed Read(string text, Unit unit)
    {
        var written = text.Trim();
        if (written.Length == 0)
        {
            return new Unreadable("nothing is written", $"write a number with its unit, {TypedUnits.Example(unit)}");
        }

        if (written.Length > 60)
        {
            return new Unreadable("it is too long for a quantity", $"write a number with its unit, {TypedUnits.Example(unit)}");
        }

        // "AWG 20" is as usual on a reel as "20 AWG".
        if (unit == Unit.SquareMillimetre && written.StartsWith("awg", StringComparison.OrdinalIgnoreCase))
        {
            written = $"{written[3..].Trim()} AWG";
        }

        var length = TypedNumber.LengthOf(written);
        if (length == 0)
        {
            return new Unreadable("it does not begin with a number", $"write a number with its unit, {TypedUnits.Example(unit)}");
        }

        if (!double.TryParse(written[..length].Replace(',', '.').Replace('−', '-'), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number))
        {
            return new Unreadable("the number is too large", $"write a number with its unit, {TypedUnits.Example(unit)}");
        }

        var rest = written[length..].Trim();
        if (rest.Length > 0 && (rest[0] is '.' or ',' or '\'' || char.IsAsciiDigit(rest[0])))
        {
            return new Unreadable("the number has more than one mark or blank in it", "write one decimal point or comma and nothing between the thousands, 1000.5");
        }

        return rest.Length == 0
            ? new Quantity(TypedUnits.Bare(unit, number), Bare: unit != Unit.One)
            : TypedUnits.Convert(unit, number, rest) is { } si
                ? new Quantity(si, Bare: false)
                : new Unreadable($"“{rest}” is not a unit for this", $"use {TypedUnits.Known(unit)}, {TypedUnits.Example(unit)}");
    }
}
