namespace Loomwright.Parts;

/// <summary>What goes on and off by itself while enough current flows through it.</summary>
/// <param name="Name">Unique inside the part.</param>
/// <param name="Element">The element that carries its load current.</param>
/// <param name="RatedAmps">The load it is made for.</param>
/// <param name="PerMinute">Flashes a minute at that load.</param>
public sealed record Flasher(string Name, string Element, FlasherLaw Law, double RatedAmps, double PerMinute)
{
    // Judgement, no source: a strip that never gets hot enough; one lamp of two missing is told.
    private const double HeatsFromShare = 0.4;
    private const double MostShare = 1.6;
    private const double TellsBelowShare = 0.75;
    private const double NoticesAmps = 0.001;

    /// <summary>Flashes a minute at a current while its contact is closed; null while it stays closed.</summary>
    public double? PerMinuteAt(double amps) => Law switch
    {
        FlasherLaw.Heat => amps >= HeatsFromShare * RatedAmps ? PerMinute * Math.Min(amps / RatedAmps, MostShare) : null,
        FlasherLaw.LoadSensing => amps < NoticesAmps ? null : amps < TellsBelowShare * RatedAmps ? 2 * PerMinute : PerMinute,
        FlasherLaw.Clock => amps < NoticesAmps ? null : PerMinute,
        FlasherLaw.Overload => amps >= RatedAmps ? PerMinute : null,
        _ => null,
    };
}

/// <summary>What makes a flasher go.</summary>
public enum FlasherLaw
{
    /// <summary>The current warms a strip: the less of it, the slower, and too little never opens it.</summary>
    Heat,

    /// <summary>Electronics that go twice as fast when a lamp is missing.</summary>
    LoadSensing,

    /// <summary>Electronics that keep their rate whatever the load.</summary>
    Clock,

    /// <summary>A breaker that closes again by itself: it goes from its rated current up.</summary>
    Overload,
}
