namespace Loomwright.Quantities;

/// <summary>The dimension a typed quantity is read in; its SI (or trade) base unit is what the value comes out in.</summary>
public enum Unit
{
    Volt,
    Amp,
    Ohm,
    Watt,
    Metre,
    SquareMillimetre,
    Celsius,
    Second,
    AmpHour,

    /// <summary>A share: <c>20 %</c> reads as 0.2.</summary>
    Share,

    /// <summary>A plain number: a ratio, an exponent, a count.</summary>
    One,
}
