using System.Collections.Immutable;
using Loomwright.Design;

namespace Loomwright.Faults;

/// <summary>Every single fault worth trying on a loom, in an order that depends on the file alone (docs/faults.md).</summary>
public static class Catalogue
{
    /// <summary>The faults alone.</summary>
    public static ImmutableArray<Fault> Of(Loom loom) => [.. List(loom).Select(f => f.Fault)];

    /// <summary>The faults with their repairs and causes. No two have the same id.</summary>
    /// <param name="loom">The healthy loom.</param>
    /// <param name="options">What is known of how it was made; decides which row a part's own faults take.</param>
    public static ImmutableArray<ListedFault> List(Loom loom, PriorOptions? options = null)
    {
        var site = new CatalogueSite(loom, options ?? new PriorOptions());
        var repairs = new Repairs(site);
        return
        [
            .. new WireFaults(site).Leads()
                .Concat(new PlugFaults(site).Exchanged())
                .Concat(new GroundFaults(site).Lost())
                .Concat(new PartFaults(site).DeadOrReversed())
                .Concat(new PlugFaults(site).Touching())
                .Concat(new WireFaults(site).LooseEnds())
                .Concat(new WireFaults(site).Chafed())
                .Concat(new WireFaults(site).High())
                .Concat(new GroundFaults(site).High())
                .Concat(new PartFaults(site).Contacts())
                .Concat(new PartFaults(site).Settings())
                .DistinctBy(f => f.Fault.ToString(), StringComparer.OrdinalIgnoreCase)
                .Select(f => new ListedFault(f.Fault, repairs.Of(f.Fault), f.Causes)),
        ];
    }
}
