namespace Loomwright.Parts;

/// <summary>
/// What one element does: the current it lets through at a voltage. v = potential(from) − potential(to),
/// i is positive from → to. Every curve is continuous and never falls, so a network of them has one operating point.
/// </summary>
public abstract record Curve
{
    /// <summary>Current and slope at a voltage; allocates nothing.</summary>
    public abstract CurvePoint At(double volts);

    /// <summary>The co-content ∫ i dv from 0 to <paramref name="volts"/>, in watts; a network rests where the sum is least.</summary>
    public abstract double ContentWatts(double volts);

    /// <summary>The curve as one straight line, or null when it bends.</summary>
    public virtual Line? Straight => null;

    /// <summary>The straight stretch it is on at a voltage, for a curve made of straight stretches; null when it bends anywhere else.</summary>
    public virtual Line? Stretch(double volts) => Straight;

    private protected static double Positive(double value, string name) =>
        value > 0 && double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, "must be a finite number above zero");

    private protected static double Finite(double value, string name) =>
        double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "must be a finite number");
}

/// <summary>One point of a curve: the current and di/dv there, the slope never negative.</summary>
public readonly record struct CurvePoint(double Amps, double Siemens);

/// <summary>A straight curve: i = (v − EmfVolts)·Siemens + Amps. <c>default</c> lets no current through.</summary>
public readonly record struct Line(double Siemens, double EmfVolts, double Amps)
{
    /// <summary>Current and slope at a voltage.</summary>
    public CurvePoint At(double volts) => new(((volts - EmfVolts) * Siemens) + Amps, Siemens);
}
