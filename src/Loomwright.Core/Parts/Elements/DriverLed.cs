namespace Loomwright.Parts;

/// <summary>
/// An LED lamp with a driver: no current up to the voltage where it starts, then up to its current at the drop-out
/// voltage, then nearly constant. A true driver's current falls a little as the voltage rises; this one never falls,
/// so that a network keeps one operating point. In reverse only leakage.
/// </summary>
/// <param name="RatedAmps">Current above drop-out.</param>
/// <param name="DropOutVolts">Voltage at which the rated current is reached.</param>
/// <param name="StartVolts">Voltage at which it starts, above zero and below drop-out.</param>
/// <param name="LeakSiemens">Slope everywhere besides, default 1e−5 S: 0.12 mA at 12 V (judgement, no source).</param>
public sealed record DriverLed(double RatedAmps, double DropOutVolts, double StartVolts, double LeakSiemens = 1e-5) : Curve
{
    private readonly Ramp _ramp = new(StartVolts, DropOutVolts, Math.Min(StartVolts, DropOutVolts - StartVolts) / 20);

    /// <inheritdoc cref="DriverLed"/>
    public double RatedAmps { get; } = Positive(RatedAmps, nameof(RatedAmps));

    /// <inheritdoc cref="DriverLed"/>
    public double StartVolts { get; } = Positive(StartVolts, nameof(StartVolts)) < DropOutVolts
        ? StartVolts
        : throw new ArgumentOutOfRangeException(nameof(StartVolts), StartVolts, "must be below the drop-out volts");

    /// <inheritdoc cref="DriverLed"/>
    public double LeakSiemens { get; } = Positive(LeakSiemens, nameof(LeakSiemens));

    /// <inheritdoc/>
    public override CurvePoint At(double volts)
    {
        var (height, slope) = _ramp.At(volts);
        return new((RatedAmps * height) + (LeakSiemens * volts), (RatedAmps * slope) + LeakSiemens);
    }

    /// <inheritdoc/>
    public override double ContentWatts(double volts) =>
        (RatedAmps * _ramp.Area(volts)) + (LeakSiemens * volts * volts / 2);
}
