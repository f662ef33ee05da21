namespace Loomwright.Parts;

/// <summary>
/// A smooth bend from flat to slope 1 at a voltage: w·ln(1 + e^((v − at)/w)), less its value at 0 V, so that it
/// passes exactly through zero. Cannot overflow.
/// </summary>
internal readonly record struct Knee(double AtVolts, double WidthVolts)
{
    private readonly double _perVolt = 1 / WidthVolts;
    private readonly double _atZero = SoftPlus(-AtVolts * (1 / WidthVolts));

    /// <summary>Height in volts (current per siemens) and slope, 0 to 1, at a voltage.</summary>
    public (double Height, double Slope) At(double volts)
    {
        var z = (volts - AtVolts) * _perVolt;
        var y = Math.Exp(-Math.Abs(z));
        return (WidthVolts * (Math.Max(z, 0) + LogOnePlus(y) - _atZero), (z > 0 ? 1 : y) / (1 + y));
    }

    /// <summary>∫ Height dv from 0, in V².</summary>
    public double Area(double volts)
    {
        var (z, z0) = ((volts - AtVolts) * _perVolt, -AtVolts * _perVolt);
        return WidthVolts * ((WidthVolts * (SoftPlusArea(z) - SoftPlusArea(z0))) - (volts * _atZero));
    }

    private static double SoftPlus(double z) => Math.Max(z, 0) + LogOnePlus(Math.Exp(-Math.Abs(z)));

    // log(1 + y) keeps its digits when 1 + y rounds: the error of the sum is divided out again.
    private static double LogOnePlus(double y)
    {
        const double rounds = 1e-15;
        var u = 1 + y;
        return y < rounds ? y : Math.Log(u) * y / (u - 1);
    }

    // ∫ ln(1 + e^z) dz from −∞ = −Li2(−e^z); for z > 0 by the reflection z²/2 + π²/6 − (the same at −z).
    private static double SoftPlusArea(double z)
    {
        var below = DilogarithmOfMinus(LogOnePlus(Math.Exp(-Math.Abs(z))));
        return z <= 0 ? below : (z * z / 2) + (Math.PI * Math.PI / 6) - below;
    }

    // −Li2(−y) in u = ln(1 + y) ≤ ln 2, by its Bernoulli series; the terms fall as (u/2π)^2k.
    private static double DilogarithmOfMinus(double u)
    {
        var s = u * u;
        return u + (s / 4) + (u * s * ((1.0 / 36) - (s * ((1.0 / 3600) - (s * ((1.0 / 211680) - (s * ((1.0 / 10886400)
            - (s * ((1.0 / 526901760) - (s * 4.0647616451442255e-11)))))))))));
    }
}
