namespace Loomwright.Parts;

/// <summary>
/// A battery that can be charged: delivering, i = (v − emf)/R; taking, i = (v − emf)/Rc with a larger Rc, because its
/// voltage rises at once when current flows in. Straight on both sides, continuous at the open-circuit voltage.
/// </summary>
/// <param name="EmfVolts">Open-circuit voltage of from against to.</param>
/// <param name="SeriesOhms">Resistance while it delivers, above zero.</param>
/// <param name="ChargingOhms">Resistance while it is charged, not below <paramref name="SeriesOhms"/>.</param>
public sealed record Cells(double EmfVolts, double SeriesOhms, double ChargingOhms) : Curve
{
    /// <inheritdoc cref="Cells"/>
    public double EmfVolts { get; } = Finite(EmfVolts, nameof(EmfVolts));

    /// <inheritdoc cref="Cells"/>
    public double SeriesOhms { get; } = Positive(SeriesOhms, nameof(SeriesOhms));

    /// <inheritdoc cref="Cells"/>
    public double ChargingOhms { get; } = Positive(ChargingOhms, nameof(ChargingOhms));

    /// <inheritdoc/>
    public override Line? Stretch(double volts) => new Line(1 / OhmsAt(volts), EmfVolts, 0);

    /// <inheritdoc/>
    public override CurvePoint At(double volts)
    {
        var ohms = OhmsAt(volts);
        return new((volts - EmfVolts) / ohms, 1 / ohms);
    }

    /// <inheritdoc/>
    public override double ContentWatts(double volts) => AboveEmf(volts) - AboveEmf(0);

    // ∫ i dv from the open-circuit voltage.
    private double AboveEmf(double volts) => (volts - EmfVolts) * (volts - EmfVolts) / (2 * OhmsAt(volts));

    private double OhmsAt(double volts) => volts > EmfVolts ? ChargingOhms : SeriesOhms;
}
