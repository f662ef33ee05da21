namespace Loomwright.Parts;

/// <summary>
/// A diode or a plain LED lamp: i = g·w·[ln(1 + e^((v − Vf)/w)) − ln(1 + e^(−Vf/w))] + g_off·v.
/// Straight with slope g above Vf, g_off below and in reverse, exactly no current at 0 V. Anode first.
/// </summary>
/// <param name="OnSiemens">g, slope when it conducts (one over its series resistance).</param>
/// <param name="ForwardVolts">Vf, where the straight part meets zero current.</param>
/// <param name="KneeVolts">w, width of the bend, at most Vf/20 or the off current would drain a battery.</param>
/// <param name="OffSiemens">g_off, leakage in reverse and below Vf.</param>
public sealed record Diode(double OnSiemens, double ForwardVolts, double KneeVolts, double OffSiemens) : Curve
{
    private readonly Knee _knee = new(ForwardVolts, KneeVolts);

    /// <inheritdoc cref="Diode"/>
    public double OnSiemens { get; } = Positive(OnSiemens, nameof(OnSiemens));

    /// <inheritdoc cref="Diode"/>
    public double KneeVolts { get; } = Positive(KneeVolts, nameof(KneeVolts)) <= ForwardVolts / 20
        ? KneeVolts
        : throw new ArgumentOutOfRangeException(nameof(KneeVolts), KneeVolts, "must be at most a twentieth of the forward volts");

    /// <inheritdoc cref="Diode"/>
    public double OffSiemens { get; } = Positive(OffSiemens, nameof(OffSiemens));

    /// <summary>A silicon rectifier of a few amps: 0.7 V, 20 mΩ, knee 0.03 V, 1e−9 S off (data-sheet practice, from memory).</summary>
    public static Diode Silicon { get; } = new(50, 0.7, 0.03, 1e-9);

    /// <summary>
    /// An LED lamp with a dropping resistor that takes its watts at its rated voltage: forward 2/3 of the rated voltage
    /// (three or four diodes in a row on 12 V), knee 0.15 V, 1e−7 S off (common practice, no source).
    /// </summary>
    public static Diode LedLamp(double watts, double ratedVolts)
    {
        var forward = ratedVolts * 2 / 3;
        return new(watts / ratedVolts / (ratedVolts - forward), forward, Math.Min(0.15, forward / 20), 1e-7);
    }

    /// <inheritdoc/>
    public override CurvePoint At(double volts)
    {
        var (height, slope) = _knee.At(volts);
        return new((OnSiemens * height) + (OffSiemens * volts), (OnSiemens * slope) + OffSiemens);
    }

    /// <inheritdoc/>
    public override double ContentWatts(double volts) =>
        (OnSiemens * _knee.Area(volts)) + (OffSiemens * volts * volts / 2);
}
