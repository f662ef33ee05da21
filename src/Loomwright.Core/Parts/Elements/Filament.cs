namespace Loomwright.Parts;

/// <summary>
/// A lamp with a filament, hot in equilibrium: i = (W/Vr)·x/(x² + e²)^0.225 with x = v/Vr and e = k^(−1/0.45).
/// Well above e the current goes as V^0.55; at 0 V the resistance ends at 1/k of the rated one. Either way round.
/// </summary>
/// <param name="Watts">Taken up at <paramref name="RatedVolts"/> (within e² = 8e−6).</param>
/// <param name="RatedVolts">The voltage the watts are stated at.</param>
/// <param name="HotOverCold">k, resistance hot over cold. Default 14: lamps show 10 to 15.</param>
public sealed record Filament(double Watts, double RatedVolts, double HotOverCold = 14) : Curve
{
    private const double Bend = 0.225;

    private readonly double _knee = Math.Pow(Positive(HotOverCold, nameof(HotOverCold)), -1 / Bend);
    private readonly double _perVolt = 1 / RatedVolts;
    private readonly double _rated = Watts / RatedVolts;

    /// <inheritdoc cref="Filament"/>
    public double Watts { get; } = Positive(Watts, nameof(Watts));

    /// <inheritdoc cref="Filament"/>
    public double RatedVolts { get; } = Positive(RatedVolts, nameof(RatedVolts));

    /// <summary>The same filament in the first milliseconds: R = Vr²/(k·W).</summary>
    public Ohms Cold() => new(RatedVolts * RatedVolts / (HotOverCold * Watts));

    /// <inheritdoc/>
    public override CurvePoint At(double volts)
    {
        var x = volts * _perVolt;
        var q = (x * x) + _knee;
        var siemens = _rated * _perVolt * Math.Pow(q, -Bend);
        return new(siemens * volts, siemens * (1 - (2 * Bend * x * x / q)));
    }

    /// <inheritdoc/>
    public override double ContentWatts(double volts)
    {
        var x = volts * _perVolt;
        const double power = 1 - Bend;
        return Watts / (2 * power) * (Math.Pow((x * x) + _knee, power) - Math.Pow(_knee, power));
    }
}
