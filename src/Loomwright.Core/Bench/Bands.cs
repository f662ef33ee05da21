using Loomwright.Quantities;

namespace Loomwright.Bench;

/// <summary>
/// How far a hand meter on a healthy bench may stray from what is computed: meter, supply, wire lengths as cut, clips.
/// The shares are judgement, no source.
/// </summary>
internal static class Bands
{
    /// <summary>Above this a hand meter shows no reading.</summary>
    public const double NoReadingOhms = 2e6;

    private const double ContinuityOhms = 5;
    private const double LeastThroughElectronicsOhms = 100;

    /// <summary>A fifth either way, and 5 mA for the last digit; where that digit swallows the lower end, as much below nothing: the meter may be in the other way round.</summary>
    public static Band Of(Current computed)
    {
        var slack = (Math.Abs(computed.Amps) * 0.2) + 0.005;
        var (least, most) = (computed.Amps - slack, computed.Amps + slack);
        return new(least > 0 ? least : Math.Min(least, -most), computed.Amps, most, Unit.Amp);
    }

    /// <summary>The band in what a 10 A socket or a supply can show: whole hundredths of an amp, widened to them.</summary>
    public static Band Hundredths(Band band) => band with
    {
        Least = band.Least is { } least ? Math.Floor(least * 100) / 100 : null,
        Most = band.Most is { } most ? Math.Ceiling(most * 100) / 100 : null,
    };

    /// <summary>The band as a 10 A socket or a supply shows it: hundredths of an amp.</summary>
    public static string OnTenAmps(Band band) => Hundredths(band) switch
    {
        { Most: <= 0.01 } => "0.00 or 0.01 A",
        var shown => FormattableString.Invariant($"{Math.Max(0, shown.Least ?? 0):0.00} A to {shown.Most:0.00} A"),
    };

    /// <summary>What wires and joints may lose: a fifth more than computed, and 0.05 V; as much below nothing, where the probes are the other way round.</summary>
    public static Band OfDrop(Voltage computed)
    {
        var most = (Math.Abs(computed.Volts) * 1.2) + 0.05;
        return new(-most, computed.Volts, most, Unit.Volt);
    }

    /// <summary>Two in a hundred either way, and 0.1 V for meter and clips.</summary>
    public static Band Of(Voltage computed)
    {
        var slack = (Math.Abs(computed.Volts) * 0.02) + 0.1;
        return new(computed.Volts - slack, computed.Volts, computed.Volts + slack, Unit.Volt);
    }

    /// <summary>
    /// Up to 5 Ω a way that should be joined: up to 0.5 Ω more for clips, tips taken off. Above: a third either way where only
    /// filaments and coils are in it, else a lower end alone, since what is inside a box or an LED differs from piece to
    /// piece and meter to meter. No path computed, or above what the meter reads: no reading, but where the way leads through
    /// electronics a lower end alone again. Between what is fed and the
    /// return a way of so few ohms is loads, not a joint: less than they have is a short.
    /// </summary>
    public static Band Of(Resistance? computed, bool plain, bool isAcross, bool isThroughElectronics) => computed switch
    {
        null when isThroughElectronics => new(LeastThroughElectronicsOhms, null, null, Unit.Ohm),
        null or { Ohms: >= NoReadingOhms } => new(NoReadingOhms, computed?.Ohms, null, Unit.Ohm),
        { Ohms: <= ContinuityOhms } cold when isAcross => OfCold(cold),
        { Ohms: <= ContinuityOhms } joined => new(0, joined.Ohms, joined.Ohms + 0.5, Unit.Ohm),
        { } loaded when plain => new(loaded.Ohms * 2 / 3, loaded.Ohms, loaded.Ohms * 4 / 3, Unit.Ohm),
        { } other => new(Math.Min(LeastThroughElectronicsOhms, other.Ohms / 2), other.Ohms, null, Unit.Ohm),
    };

    /// <summary>Whether a reading of no ohms is outside.</summary>
    public static bool TellsAShort(Band band) => band.Least is > 0;

    /// <summary>A cold filament or winding: a third either way and what clips and the last digit add; from 0 on where that digit swallows the lower end.</summary>
    public static Band OfCold(Resistance computed)
    {
        var least = (computed.Ohms * 2 / 3) - 0.1;
        return new(least >= 0.1 ? least : 0, computed.Ohms, (computed.Ohms * 4 / 3) + 0.5, Unit.Ohm);
    }

    /// <summary>Ohms as a hand meter shows them: to the tenth.</summary>
    public static string Shown(Resistance ohms) => ohms.Ohms < 10 ? FormattableString.Invariant($"{ohms.Ohms:0.0} Ω") : ohms.ToString();

    /// <summary>In words: <c>0.32 A to 0.49 A</c>, <c>at most 1.02 Ω</c>, <c>no reading</c>.</summary>
    public static string Words(Band band) => band switch
    {
        { Unit: Unit.Ohm, Least: >= NoReadingOhms, Most: null } => "no reading (OL, or 1 at the left): not joined",
        { Unit: Unit.Ohm, Least: null or <= 0, Most: { } most } => $"at most {Written(most, band.Unit)}",
        { Unit: Unit.Volt or Unit.Amp, Least: { } least, Most: { } most } when least == -most => $"at most {Written(most, band.Unit)}",
        { Least: { } least, Most: { } most } => $"{Written(least, band.Unit)} to {Written(most, band.Unit)}",
        { Unit: Unit.Ohm, Least: { } least, Most: null } => $"at least {Written(least, band.Unit)}, or no reading",
        { Least: { } least } => $"at least {Written(least, band.Unit)}",
        { Most: { } most } => $"at most {Written(most, band.Unit)}",
        _ => "",
    };

    /// <summary>The smallest band that holds both: what swings between two numbers while it flashes.</summary>
    public static Band Both(Band a, Band b) => new(
        Math.Min(a.Least ?? double.NegativeInfinity, b.Least ?? double.NegativeInfinity) is var least && double.IsFinite(least) ? least : null,
        a.Computed,
        Math.Max(a.Most ?? double.PositiveInfinity, b.Most ?? double.PositiveInfinity) is var most && double.IsFinite(most) ? most : null,
        a.Unit);

    private static string Written(double value, Unit unit) => unit switch
    {
        Unit.Amp => new Current(value).ToString(),
        Unit.Volt => new Voltage(value).ToString(),
        _ => Shown(new Resistance(value)),
    };
}
