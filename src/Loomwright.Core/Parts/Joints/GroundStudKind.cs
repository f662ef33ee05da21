using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A bolt that ground rings sit on (docs/models/ground-stud.md).</summary>
internal static class GroundStudKind
{
    private static readonly Amount Rings = new("rings", "How many rings find room on it.", Unit.One, 1, 20);

    public static Kind Kind { get; } = new(
        "ground stud", "A bolt that ground rings sit on; it is at ground only through its own lead.", [Rings.Parameter], _ => new Model { Terminals = [new Terminal("", Role.Lead)] });
}
