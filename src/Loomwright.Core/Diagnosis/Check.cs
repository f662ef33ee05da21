namespace Loomwright.Diagnosis;

/// <summary>What of a thing is looked at or tried with the key off and the main fuse out.</summary>
public enum CheckKind
{
    /// <summary>A part's terminals, with the eyes: where each wire sits, what touches, what is not in.</summary>
    Terminals,

    /// <summary>The plug of a part, out, with the meter on ohms between neighbouring cavities on the loom's side.</summary>
    Plug,

    /// <summary>A wire, both ends off, with the meter on ohms: along it, and from it to what it may touch.</summary>
    Wire,

    /// <summary>A part that is grounded by what it sits on, with the meter on ohms: from its metal to battery minus.</summary>
    Ground,

    /// <summary>A part off the bike or with its plug out, tried by itself, and what is set or printed on it read.</summary>
    Part,
}

/// <summary>A look at the thing itself or a try of it alone. Nothing is powered, so it harms nothing.</summary>
/// <param name="Kind">What of it.</param>
/// <param name="Subject">The part, ground or wire.</param>
public sealed record Check(CheckKind Kind, string Subject)
{
    /// <summary>What is told when nothing is wrong there.</summary>
    public const string AsDesigned = "as it should be";

    /// <summary>How it is called: <c>terminals of box</c>, <c>wire stop lamp feed</c>.</summary>
    public string Name => Kind switch
    {
        CheckKind.Terminals => $"terminals of {Subject}",
        CheckKind.Plug => $"plug of {Subject}",
        CheckKind.Wire => $"wire {Subject}",
        CheckKind.Ground => $"ground of {Subject}",
        _ => $"{Subject} by itself",
    };

    /// <summary>What to do, as a sentence.</summary>
    public string Ask => Kind switch
    {
        CheckKind.Terminals => $"look at the terminals of {Subject}: does every wire sit where the design has it, does any touch its neighbour, is anything not in?",
        CheckKind.Plug => $"take the plug of {Subject} out, meter on ohms between its cavities, wires still in: is there no way between neighbours that should have none?",
        CheckKind.Wire => $"look along {Subject}: is it chafed, pinched or melted? Then both ends off, meter on ohms: is there a good way along it, and none from it to ground or plus?",
        CheckKind.Ground => $"meter on ohms, from the metal of {Subject} to the ground lead of the battery, where it came off its post: is there a good way?",
        _ => $"take the plug of {Subject} out, meter on ohms through it, or put one that is known to work in its place, and read what is printed on it: is it as the design has it?",
    };

    /// <summary>Minutes, judgement: to get there and look; to pull the plug or both ends and measure; to take it off and try it.</summary>
    public double Minutes => Kind switch { CheckKind.Terminals => 1, CheckKind.Part => 3, _ => 2 };
}

/// <summary>What a check finds when something is wrong.</summary>
/// <param name="Check">The check.</param>
/// <param name="Found">What is found, as a person tells it.</param>
/// <param name="Chance">How likely it shows itself there at all, 0…1: a wire that was left out is seen, a bad crimp is not.</param>
public readonly record struct Trace(Check Check, string Found, double Chance);
