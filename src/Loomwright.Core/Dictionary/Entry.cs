using System.Collections.Immutable;
using Loomwright.Faults;

namespace Loomwright.Dictionary;

/// <summary>One electrical state of the loom: no fault, or a fault under all its names.</summary>
/// <param name="Faults">The faults that come to the same circuit, in the catalogue's order; empty for no fault.</param>
/// <param name="Prior">How likely, all its names together; for no fault: that none of the others is there.</param>
/// <param name="Looks">What there is to see after each stimulus, in their order.</param>
/// <param name="Class">Place of its class among <see cref="FaultTable.Classes"/>.</param>
public sealed record Entry(ImmutableArray<ListedFault> Faults, double Prior, ImmutableArray<Look> Looks, int Class)
{
    /// <summary>Whether it is the loom with nothing wrong.</summary>
    public bool IsHealthy => Faults.IsEmpty;
}
