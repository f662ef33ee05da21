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

    /// <summary>The strictest published one for single sizes of wire.</summary>
    internal static AmpacityRule Strictest => AircraftTables.Fuses;

    /// <summary>The rule a design is sized by: the one it names, or the usual one when it names none or none there is.</summary>
    public static AmpacityRule Of(Design.Conditions conditions) => (conditions.AmpacityRule is { } name ? Find(name) : null) ?? Usual;

    /// <summary>The name a design gives that is no rule's, or null.</summary>
    public static string? Unknown(Design.Conditions conditions) => conditions.AmpacityRule is { } name && Find(name) is null ? name : null;

    /// <summary>The rule of that name, or null.</summary>
    public static AmpacityRule? Find(string name) => All.FirstOrDefault(r => Names.Same(r.Name, name));
}
