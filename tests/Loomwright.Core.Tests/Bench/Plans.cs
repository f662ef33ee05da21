using System.Collections.Concurrent;
using Loomwright.Bench;
using Loomwright.Bench.OnTheBike;
using Loomwright.Design;

namespace Loomwright.Tests.Bench;

/// <summary>Both plans of a loom, made once: those of a whole bike take seconds.</summary>
internal static class Plans
{
    private static readonly ConcurrentDictionary<Loom, (Lazy<Plan> Bench, Lazy<Plan> Bike)> Made = new(ReferenceEqualityComparer.Instance);
    private static readonly ConcurrentDictionary<string, Loom> Bikes = new(StringComparer.Ordinal);

    /// <summary>One of the whole bikes of the examples.</summary>
    public static Loom Bike(string name) => Bikes.GetOrAdd(name, n => Examples.Read($"examples/{n}/{n}.loom.yaml"));

    public static Plan OnTheBench(Loom loom) => Of(loom).Bench.Value;

    public static Plan OnTheBike(Loom loom) => Of(loom).Bike.Value;

    private static (Lazy<Plan> Bench, Lazy<Plan> Bike) Of(Loom loom) => Made.GetOrAdd(loom, l => (new(() => Plan.For(l)), new(() => BikePlan.For(l))));
}
