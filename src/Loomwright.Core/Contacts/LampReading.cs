namespace Loomwright.Contacts;

/// <summary>One look at two leads of a lamp.</summary>
/// <param name="Plus">The lead with plus on it; for the ohmmeter, either.</param>
/// <param name="Minus">The lead with minus on it; for the ohmmeter, the other.</param>
/// <param name="Ohms">What the ohmmeter showed, its own leads taken off, in ohms; null when it showed no end, or the lamp was fed.</param>
/// <param name="Fed">True when it was fed 12 V through 1 kΩ in place of being measured.</param>
/// <param name="Lights">Whether it then lit.</param>
public sealed record LampReading(int Plus, int Minus, double? Ohms = null, bool Fed = false, bool Lights = false)
{
    /// <summary>Whether it is of this pair, in either order.</summary>
    public bool IsOf(int one, int other) => (Plus, Minus) == (one, other) || (Plus, Minus) == (other, one);
}

/// <summary>What to do next with a lamp's leads.</summary>
/// <param name="Plus">The lead plus goes to; for the ohmmeter, either.</param>
/// <param name="Minus">The lead minus goes to.</param>
/// <param name="Feed">True to feed 12 V through 1 kΩ, false to measure ohms.</param>
public sealed record LampQuestion(int Plus, int Minus, bool Feed);
