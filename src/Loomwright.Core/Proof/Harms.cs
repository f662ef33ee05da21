using System.Collections.Immutable;
using Loomwright.Faults;

namespace Loomwright.Proof;

/// <summary>What becomes of a harmful fault on the bench.</summary>
public enum Fate
{
    /// <summary>A measurement before power reads outside its band with the fault.</summary>
    Caught,

    /// <summary>At the current of first power nothing passes its limit, and the fault shows.</summary>
    Limited,

    /// <summary>Neither: only the precaution at its step is left.</summary>
    Open,
}

/// <summary>A single fault that does harm in some state of the plan.</summary>
/// <param name="Fault">The fault.</param>
/// <param name="Kinds">Everything it does, over all states of the plan.</param>
/// <param name="Stage">Number of the first stage in which it does harm at full power.</param>
/// <param name="Step">The step there with which it begins.</param>
/// <param name="Fate">What becomes of it.</param>
/// <param name="By">The step that tells it; null when it is open.</param>
/// <param name="Margin">Of a measurement: how many times the reading misses its band, the meter's tolerance taken off; null otherwise.</param>
/// <param name="Precaution">What to mind at <paramref name="Step"/>, for one that is open; else empty.</param>
public sealed record HarmfulFault(Fault Fault, ImmutableArray<HarmKind> Kinds, int Stage, string Step, Fate Fate, string? By, double? Margin, string Precaution);

/// <summary>Every single fault that does harm in some state of the plan: caught + limited + open, none left out.</summary>
/// <param name="Faults">In the order of the catalogue.</param>
/// <param name="Possible">The kinds of harm the bike can show.</param>
public sealed record HarmList(ImmutableArray<HarmfulFault> Faults, ImmutableArray<HarmKind> Possible)
{
    /// <summary>Of how many it becomes that.</summary>
    public int Count(Fate fate) => Faults.Count(f => f.Fate == fate);

    /// <summary>How many do harm of a kind, a fault that does several in each; and of how many of these it becomes that.</summary>
    public int Count(HarmKind kind, Fate? fate = null) => Faults.Count(f => f.Kinds.Contains(kind) && (fate is null || f.Fate == fate));
}
