using System.Collections.Immutable;
using Loomwright.Faults;

namespace Loomwright.Proof;

/// <summary>How well a plan sees a fault; each fault is in exactly one class.</summary>
public enum SeenBy
{
    /// <summary>At least two different observations tell it.</summary>
    Two,

    /// <summary>One does.</summary>
    One,

    /// <summary>It is there and changes nothing: a second wire does the same, or a joint that carries next to nothing.</summary>
    NoEffectNow,

    /// <summary>No stage connects what it is about.</summary>
    NotReached,

    /// <summary>Volts somewhere differ, but no step of the plan reads there closely enough.</summary>
    NeedsAMeter,
}

/// <summary>One fault and what sees it.</summary>
/// <param name="Fault">The fault.</param>
/// <param name="SeenBy">Its class.</param>
/// <param name="By">Up to two steps with different observations, the first first.</param>
/// <param name="Missing">What no stage connects, for one that is not reached; else null.</param>
public sealed record FaultSeen(Fault Fault, SeenBy SeenBy, ImmutableArray<string> By, string? Missing)
{
    /// <summary>Numbers of the stages that see it.</summary>
    public ImmutableArray<int> Stages { get; init; } = [];

    /// <summary>The stage without which nothing sees it, its once more in the next stage left out too; null where others do, or none does.</summary>
    public int? LostWithout { get; init; }

    /// <summary>Of one seen once: why there is no second observation; else null.</summary>
    public string? WhyOnce { get; init; }

    /// <summary>Whether looking and listening alone is enough.</summary>
    public bool ByLooking { get; init; }
}

/// <summary>What a plan sees of every single fault the catalogue knows.</summary>
/// <param name="Faults">In the order of the catalogue.</param>
public sealed record Coverage(ImmutableArray<FaultSeen> Faults)
{
    /// <summary>How many are in a class.</summary>
    public int Count(SeenBy seenBy) => Faults.Count(f => f.SeenBy == seenBy);

    /// <summary>Share of all faults that the plan sees, 0 to 1.</summary>
    public double Seen => Share(f => f.SeenBy is SeenBy.Two or SeenBy.One);

    /// <summary>Share that operating everything and looking would see, 0 to 1.</summary>
    public double SeenByLooking => Share(f => f.ByLooking);

    /// <summary>The faults that nothing sees when one stage is left out, and with it its once more in the stage after.</summary>
    public IEnumerable<Fault> LostWithout(int stage) => Faults.Where(f => f.LostWithout == stage).Select(f => f.Fault);

    private double Share(Func<FaultSeen, bool> counts) => Faults.IsEmpty ? 0 : (double)Faults.Count(counts) / Faults.Length;
}
