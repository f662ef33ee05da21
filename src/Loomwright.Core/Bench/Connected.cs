using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>The design of exactly what is connected at a stage.</summary>
internal static class Connected
{
    /// <summary>The parts and wires of a reach, in file order. Promises are left out: they speak of the whole bike.</summary>
    public static Loom Of(Loom loom, Reach reach)
    {
        var parts = reach.Parts.ToHashSet(Names.Comparer);
        var wires = reach.Wires.ToHashSet(Names.Comparer);
        return loom with
        {
            Parts = [.. loom.Parts.Where(p => parts.Contains(p.Name))],
            Wires = [.. loom.Wires.Where(w => wires.Contains(w.Name))],
            Functions = [],
            StandIns = [],
        };
    }

    /// <summary>The same design with other printed ratings in some fuses.</summary>
    public static Loom WithFuses(Loom loom, IReadOnlyDictionary<string, double> amps) => loom with
    {
        Parts = [.. loom.Parts.Select(p => amps.TryGetValue(p.Name, out var rating) ? p with { Settings = p.Settings.With("rating", new Value.Number(rating)) } : p)],
    };
}
