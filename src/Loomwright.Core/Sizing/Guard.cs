using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.Sizing;

/// <summary>What opens when too much flows.</summary>
public enum GuardKind
{
    Fuse,
    Breaker,

    /// <summary>An output that trips above its limit.</summary>
    Output,
}

/// <summary>What stands before a wire and limits it.</summary>
/// <param name="Part">The fuse, the breaker or the box.</param>
/// <param name="Terminal">Of the output; null for fuses.</param>
/// <param name="Rating">Printed on it, or the output's limit.</param>
public sealed record Guard(GuardKind Kind, string Part, string? Terminal, Current Rating)
{
    /// <summary>How long it stands how much; null for what is no fuse.</summary>
    public FuseBand? Band { get; init; }

    /// <summary><c>main fuse (30 A)</c>, <c>box X4 (trips above 5 A)</c>.</summary>
    public string InWords => Terminal is null ? $"{Part} ({Rating.Printed})" : $"{Part} {Terminal} (trips above {Rating.Printed})";
}
