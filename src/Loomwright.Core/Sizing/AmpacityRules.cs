using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.Sizing;

/// <summary>The rules there are. Tables that list one conductor and a bundle are two rules.</summary>
public static class AmpacityRules
{
    /// <summary>Every rule, in the order they are told.</summary>
    public static ImmutableArray<AmpacityRule> All { get; } =
    [
        MetricTables.Practice, MetricTables.Vehicle, MetricTables.PerArea,
        BoatTables.Code,
        AircraftTables.Fuses, AircraftTables.Bundle, AircraftTables.MilSingle, AircraftTables.MilBundle, AircraftTables.SpaceSingle, AircraftTables.SpaceBundle,
        BuildingTables.Enclosed, BuildingTables.OnSurface, BuildingTables.FreeAir,
    ];

    /// <summary>Taken when the owner names none.</summary>
    public static AmpacityRule Usual => MetricTables.Practice;

    /// <summary>The rule of that name, or null.</summary>
    public static AmpacityRule? Find(string name) => All.FirstOrDefault(r => Names.Same(r.Name, name));
}
