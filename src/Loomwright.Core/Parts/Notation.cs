using Loomwright.Design;

namespace Loomwright.Parts;

/// <summary>How a terminal is written, said once where such names are first read.</summary>
public static class Notation
{
    /// <summary><c>“battery +” and “battery.+” both mean terminal + of battery.</c> Said with the supply's own name; null for a design without one.</summary>
    public static string? Of(Loom loom) => loom.Parts
        .Select(p => Kinds.Find(p.Kind)?.Build(p).Supply is { } supply ? $"“{p.Name} {supply.Plus}” and “{p.Name}.{supply.Plus}” both mean terminal {supply.Plus} of {p.Name}." : null)
        .FirstOrDefault(said => said is not null);
}
