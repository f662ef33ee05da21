namespace Loomwright.Parts;

/// <summary>A resistance: wire, closed or leaky contact, coil, horn, heater. i = v/R.</summary>
/// <param name="ResistanceOhms">Above zero. A contact that is open but not cut off is <see cref="OpenContactOhms"/>.</param>
public sealed record Ohms(double ResistanceOhms) : Curve
{
    /// <summary>An open contact, Ω: 1e−9 S (judgement, no source: dry insulation across a switch).</summary>
    public const double OpenContactOhms = 1e9;

    /// <summary>A contact that does not touch, a switched-off output, a blown fuse.</summary>
    public static Ohms OpenContact { get; } = new(OpenContactOhms);

    /// <inheritdoc cref="Ohms"/>
    public double ResistanceOhms { get; } = Positive(ResistanceOhms, nameof(ResistanceOhms));

    /// <inheritdoc/>
    public override Line? Straight => new Line(1 / ResistanceOhms, 0, 0);

    /// <inheritdoc/>
    public override CurvePoint At(double volts) => new(volts / ResistanceOhms, 1 / ResistanceOhms);

    /// <inheritdoc/>
    public override double ContentWatts(double volts) => volts * volts / (2 * ResistanceOhms);
}

/// <summary>No path at all: a wire left out, a fuse taken out. Exactly no current at any voltage.</summary>
public sealed record Open : Curve
{
    /// <inheritdoc/>
    public override Line? Straight => default(Line);

    /// <inheritdoc/>
    public override CurvePoint At(double volts) => default;

    /// <inheritdoc/>
    public override double ContentWatts(double volts) => 0;
}
