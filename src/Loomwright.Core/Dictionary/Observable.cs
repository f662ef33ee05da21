using Loomwright.Simulation;

namespace Loomwright.Dictionary;

/// <summary>By what a person notices something.</summary>
public enum Sense
{
    /// <summary>A lamp, horn, motor or load; its sign is a <see cref="Symbol"/>.</summary>
    Sight,

    /// <summary>A small light beside a terminal of a box; its sign is a <see cref="Symbol"/>.</summary>
    BoxLight,

    /// <summary>A relay, heard when it clicks; its sign is 1 while pulled in.</summary>
    Relay,

    /// <summary>A fuse, looked at; its sign is a <see cref="FuseState"/>.</summary>
    Fuse,
}

/// <summary>One thing a person can tell without a meter.</summary>
/// <param name="Sense">How.</param>
/// <param name="Name">What: <c>rear cluster.stop</c>, <c>box.X4</c>, the relay or the fuse.</param>
/// <param name="Part">The part it belongs to.</param>
public sealed record Observable(Sense Sense, string Name, string Part)
{
    /// <summary>By which power of the volts a lamp's light goes; null for what gives none.</summary>
    public double? LightPower { get; init; }

    /// <summary>A sign in the words every screen uses.</summary>
    public string Word(byte sign) => Sense switch
    {
        Sense.Sight => Words.Of((Symbol)sign),
        Sense.BoxLight => Words.OfLight((Symbol)sign),
        Sense.Relay => sign == 0 ? "released" : "pulled in",
        _ => Words.Of((FuseState)sign),
    };
}
