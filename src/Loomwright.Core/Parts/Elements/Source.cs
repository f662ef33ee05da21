namespace Loomwright.Parts;

/// <summary>A battery: its open-circuit voltage behind a resistance. i = (v − emf)/R, so a battery that delivers reads negative.</summary>
/// <param name="EmfVolts">Open-circuit voltage of from against to.</param>
/// <param name="SeriesOhms">Internal resistance, above zero.</param>
public sealed record Source(double EmfVolts, double SeriesOhms) : Curve
{
    /// <inheritdoc cref="Source"/>
    public double EmfVolts { get; } = Finite(EmfVolts, nameof(EmfVolts));

    /// <inheritdoc cref="Source"/>
    public double SeriesOhms { get; } = Positive(SeriesOhms, nameof(SeriesOhms));

    /// <inheritdoc/>
    public override Line? Straight => new Line(1 / SeriesOhms, EmfVolts, 0);

    /// <inheritdoc/>
    public override CurvePoint At(double volts) => new((volts - EmfVolts) / SeriesOhms, 1 / SeriesOhms);

    /// <inheritdoc/>
    public override double ContentWatts(double volts) => volts * ((volts / 2) - EmfVolts) / SeriesOhms;
}
