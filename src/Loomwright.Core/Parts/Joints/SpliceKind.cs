namespace Loomwright.Parts;

/// <summary>Wires joined in one point (docs/models/splice.md).</summary>
internal static class SpliceKind
{
    public static Kind Kind { get; } = new("splice", "A point where wires are joined.", [], _ => new Model { Terminals = [new Terminal("", Role.Lead)] });
}
