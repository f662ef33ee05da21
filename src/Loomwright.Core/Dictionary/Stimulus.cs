using System.Collections.Immutable;
using Loomwright.Simulation;

namespace Loomwright.Dictionary;

/// <summary>Something done to what is connected, from power-on with every control at rest; what is looked at is how it then stands.</summary>
/// <param name="Name">In words: <c>lock → riding, thumb horn → pressed</c>.</param>
/// <param name="Operations">In order, each settled before the next.</param>
public sealed record Stimulus(string Name, ImmutableArray<Operation> Operations)
{
    /// <summary>Named by what is done.</summary>
    public static Stimulus Of(ImmutableArray<Operation> operations) =>
        new(operations.IsEmpty ? "power connected" : string.Join(", ", operations.Select(Words)), operations);

    public bool Equals(Stimulus? other) => other is not null && Name == other.Name && Operations.SequenceEqual(other.Operations);

    public override int GetHashCode() => Name.GetHashCode(StringComparison.Ordinal);

    private static string Words(Operation operation) => operation switch
    {
        Operation.Set set => $"{set.Control} → {set.Position}",
        Operation.Tap tap => $"{tap.Control} tapped",
        Operation.Wait wait => FormattableString.Invariant($"{wait.Time.TotalSeconds:0.###} s later"),
        _ => "",
    };
}
