namespace Loomwright.Contacts;

/// <summary>What the meter did between two leads.</summary>
public enum Heard
{
    /// <summary>It beeped: metal joins them.</summary>
    Beep,

    /// <summary>It showed ohms and kept silent.</summary>
    Ohms,

    /// <summary>Nothing: it shows no end.</summary>
    Nothing,
}

/// <summary>One touch of the probes, power off and the switch unplugged.</summary>
/// <param name="Position">The position the switch stood in, by its number from 0.</param>
/// <param name="One">One lead, by its number from 0.</param>
/// <param name="Other">The other lead.</param>
/// <param name="Heard">What the meter did.</param>
/// <param name="Ohms">What it showed, in ohms; null unless it showed ohms.</param>
public sealed record Reading(int Position, int One, int Other, Heard Heard, double? Ohms = null)
{
    /// <summary>Below this, in ohms, two leads count as joined: a worn contact, not a part inside (judgement; meters beep below some 30 Ω).</summary>
    public const double MostOfAContact = 10;

    /// <summary>Whether metal joins the two.</summary>
    public bool IsJoined => Heard == Heard.Beep || Ohms < MostOfAContact;

    /// <summary>Whether it is between this pair, either way round, in this position.</summary>
    public bool Is(int position, int one, int other) => Position == position && ((One, Other) == (one, other) || (One, Other) == (other, one));
}
