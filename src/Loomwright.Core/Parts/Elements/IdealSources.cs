namespace Loomwright.Parts;

/// <summary>An ideal current source: the same current from → to through the source, whatever the voltage. Into an open node it is a structural error.</summary>
public sealed record FixedCurrent(double Amps) : Curve
{
    /// <inheritdoc cref="FixedCurrent"/>
    public double Amps { get; } = Finite(Amps, nameof(Amps));

    /// <inheritdoc/>
    public override Line? Straight => new Line(0, 0, Amps);

    /// <inheritdoc/>
    public override CurvePoint At(double volts) => new(Amps, 0);

    /// <inheritdoc/>
    public override double ContentWatts(double volts) => volts * Amps;
}

/// <summary>
/// An ideal voltage source; 0 V is a perfect short. It joins its two nodes at a fixed difference, so its curve is a
/// vertical line: its current comes from the current sum of a node, never from <see cref="At"/>, which says 0 A and an
/// infinite slope. A loop of such is a structural error.
/// </summary>
/// <param name="Volts">Potential of from minus potential of to.</param>
public sealed record FixedVoltage(double Volts) : Curve
{
    /// <inheritdoc cref="FixedVoltage"/>
    public double Volts { get; } = Finite(Volts, nameof(Volts));

    /// <inheritdoc/>
    public override CurvePoint At(double volts) => new(0, double.PositiveInfinity);

    /// <inheritdoc/>
    public override double ContentWatts(double volts) => 0;
}
