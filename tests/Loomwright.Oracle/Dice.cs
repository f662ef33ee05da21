using Loomwright.Parts;

namespace Loomwright.Oracle;

/// <summary>Seeded random numbers (SplitMix64) and the elements of the random networks made from them.</summary>
public sealed class Dice(ulong seed)
{
    private ulong _state = seed;

    public double Even(double low, double high) => low + ((high - low) * (Next() >> 11) * (1.0 / (1UL << 53)));

    /// <summary>Even over the logarithm.</summary>
    public double Spread(double low, double high) => Math.Exp(Even(Math.Log(low), Math.Log(high)));

    public int Below(int count) => (int)(Next() % (ulong)count);

    public bool Chance(double part) => Even(0, 1) < part;

    /// <summary>Something that conducts, if only as an open contact.</summary>
    public Curve TreeCurve(bool bends) => Below(60) switch
    {
        < 25 => new Ohms(Spread(1e-3, 1)),
        < 34 => new Ohms(Spread(1e-3, 1e4)),
        < 35 => new Ohms(Ohms.OpenContactOhms),
        < 44 => new Source(Even(3, 15), Spread(4e-3, 1)),
        _ => bends ? Bent() : new Ohms(Spread(0.1, 1e3)),
    };

    /// <summary>Anything that may lie across a network that already hangs together.</summary>
    public Curve CrossCurve(bool bends) => Below(20) switch
    {
        < 4 => new Ohms(Spread(1e-3, 1e4)),
        < 6 => new Ohms(Ohms.OpenContactOhms),
        < 7 => new Ohms(1e7),
        < 9 => new Open(),
        < 11 => new FixedCurrent(Even(-1, 1) * Spread(1e-3, 10)),
        < 13 => new Source(Even(3, 15), Spread(4e-3, 1)),
        _ => bends ? Bent() : new Ohms(Spread(0.1, 1e3)),
    };

    private Curve Bent() => Below(7) switch
    {
        0 or 1 => new Filament(Spread(1.2, 60), Chance(0.2) ? 6 : Even(12, 13.5), Even(10, 15)),
        2 => Diode.Silicon,
        3 => Diode.LedLamp(Spread(0.2, 20), Even(12, 13.5)),
        4 => RandomDiode(Even(0.2, 9)),
        5 => new DriverLed(Spread(0.02, 2), Even(7, 10), Even(3, 6)),
        _ => new LimitedSource(Even(5, 15), Spread(0.01, 0.2), Spread(0.1, 20)),
    };

    private Diode RandomDiode(double forwardVolts) =>
        new(Spread(0.01, 100), forwardVolts, forwardVolts / Even(20, 40), Spread(1e-9, 1e-5));

    private ulong Next()
    {
        _state += 0x9E3779B97F4A7C15;
        var z = _state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
