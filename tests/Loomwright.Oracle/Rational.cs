using System.Numerics;

namespace Loomwright.Oracle;

/// <summary>A fraction of whole numbers without rounding, in lowest terms, the denominator above zero.</summary>
public readonly record struct Rational
{
    private Rational(BigInteger top, BigInteger bottom)
    {
        var common = BigInteger.GreatestCommonDivisor(top, bottom);
        Top = top / common;
        Bottom = bottom / common;
    }

    public static Rational Zero { get; } = new(0, 1);

    public BigInteger Top { get; }

    public BigInteger Bottom { get; }

    /// <summary>Exactly the number a double holds.</summary>
    public static Rational Of(double value)
    {
        var exponent = 0;
        while (value != Math.Floor(value))
        {
            value *= 2;
            exponent++;
        }

        return new(new BigInteger(value), BigInteger.One << exponent);
    }

    public static Rational operator +(Rational a, Rational b) => new((a.Top * b.Bottom) + (b.Top * a.Bottom), a.Bottom * b.Bottom);

    public static Rational operator -(Rational a, Rational b) => new((a.Top * b.Bottom) - (b.Top * a.Bottom), a.Bottom * b.Bottom);

    public static Rational operator *(Rational a, Rational b) => new(a.Top * b.Top, a.Bottom * b.Bottom);

    public static Rational operator /(Rational a, Rational b) => b.Top.Sign < 0 ? new(-a.Top * b.Bottom, a.Bottom * -b.Top) : new(a.Top * b.Bottom, a.Bottom * b.Top);

    /// <summary>The nearest double, to within one bit.</summary>
    public double ToDouble()
    {
        if (Top.IsZero)
        {
            return 0;
        }

        var shift = (int)(80 - BigInteger.Abs(Top).GetBitLength() + Bottom.GetBitLength());
        var quotient = shift >= 0 ? (Top << shift) / Bottom : Top / (Bottom << -shift);
        return Math.ScaleB((double)quotient, -shift);
    }
}
