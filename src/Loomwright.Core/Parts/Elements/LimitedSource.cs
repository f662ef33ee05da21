namespace Loomwright.Parts;

/// <summary>
/// A bench supply or a charging source: volts behind a resistance until the current limit, constant current below
/// that, and it takes nothing back when something else lifts its terminals higher. Corners rounded by a fiftieth of
/// the drop at the limit; a small slope is left on both sides.
/// </summary>
/// <param name="Volts">Set voltage of from against to, above zero; with next to no load it stands a few hundredths of the drop at the limit higher.</param>
/// <param name="SeriesOhms">Output resistance, above zero.</param>
/// <param name="LimitAmps">Most it delivers, above zero.</param>
/// <param name="SlopeSiemens">Slope on both sides, default 1e−5 S (judgement, no source).</param>
public sealed record LimitedSource(double Volts, double SeriesOhms, double LimitAmps, double SlopeSiemens = 1e-5) : Curve
{
    // What the rounded corner still delivers at the set voltage, as a part of the limit: ln 2 / 50.
    private const double LeftAtSetVolts = 0.02 * 0.69314718055994531;

    // The ramp is laid around its own set voltage, so that the current there comes from small numbers.
    private readonly Ramp _ramp = new(-SeriesOhms * LimitAmps, 0, SeriesOhms * LimitAmps / 50);

    /// <inheritdoc cref="LimitedSource"/>
    public double Volts { get; } = Positive(Volts, nameof(Volts));

    /// <inheritdoc cref="LimitedSource"/>
    public double SeriesOhms { get; } = Positive(SeriesOhms, nameof(SeriesOhms));

    /// <inheritdoc cref="LimitedSource"/>
    public double LimitAmps { get; } = Positive(LimitAmps, nameof(LimitAmps));

    /// <inheritdoc cref="LimitedSource"/>
    public double SlopeSiemens { get; } = Positive(SlopeSiemens, nameof(SlopeSiemens));

    /// <inheritdoc/>
    public override CurvePoint At(double volts)
    {
        var above = volts - Volts;
        var (height, slope) = _ramp.At(above);
        return new((LimitAmps * (height - LeftAtSetVolts)) + (SlopeSiemens * above), (LimitAmps * slope) + SlopeSiemens);
    }

    /// <inheritdoc/>
    public override double ContentWatts(double volts)
    {
        var above = volts - Volts;
        return (LimitAmps * (_ramp.Area(above) - _ramp.Area(-Volts) - (LeftAtSetVolts * volts)))
            + (SlopeSiemens * volts * ((volts / 2) - Volts));
    }
}
