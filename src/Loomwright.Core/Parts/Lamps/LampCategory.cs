using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>
/// A standard filament lamp, UN Regulation 37; a two-filament lamp has a row for each. Rated watts are a label: some
/// categories take them at 12 V, others at the test voltage already. Figures partly read, partly from memory (docs/models/lamp.md).
/// </summary>
/// <param name="Name">The category, and for one filament of two which of them.</param>
/// <param name="RatedWatts">Printed on it.</param>
/// <param name="TestVolts">Where it is tested.</param>
/// <param name="MostWatts">Most it may take at the test voltage.</param>
internal sealed record LampCategory(string Name, double RatedWatts, double TestVolts, double MostWatts)
{
    // P ∝ V^1.55, from I ∝ V^0.55 (encyclopaedia article on incandescent lamps).
    private const double PowerExponent = 1.55;

    /// <summary>What the model lets it take at the test voltage: the rated watts carried up from 12 V where that stays within the most allowed, else the rated watts.</summary>
    public double WattsAtTest => RatedWatts * Math.Pow(TestVolts / 12, PowerExponent) is var carried && carried <= MostWatts ? carried : RatedWatts;

    public static ImmutableArray<LampCategory> All { get; } =
    [
        new("H1", 55, 13.2, 68),
        new("H3", 55, 13.2, 68),
        new("H4 main", 60, 13.2, 75),
        new("H4 dipped", 55, 13.2, 68),
        new("H7", 55, 13.2, 58),
        new("H8", 35, 13.2, 43),
        new("H9", 65, 13.2, 73),
        new("H11", 55, 13.2, 62),
        new("HB3", 60, 13.2, 73),
        new("HB4", 51, 13.2, 62),
        new("H17 main", 35, 13.2, 37),
        new("H17 dipped", 35, 13.2, 37),
        new("HS1 main", 35, 13.2, 36.75),
        new("HS1 dipped", 35, 13.2, 36.75),
        new("S1 main", 25, 13.5, 26.25),
        new("S1 dipped", 25, 13.5, 26.25),
        new("S2 main", 35, 13.5, 36.75),
        new("S2 dipped", 35, 13.5, 36.75),
        new("P21W", 21, 13.5, 26.5),
        new("PY21W", 21, 13.5, 26.5),
        new("P21/5W stop", 21, 13.5, 26.5),
        new("P21/5W tail", 5, 13.5, 6.6),
        new("PY21/5W turn", 21, 13.5, 26.5),
        new("PY21/5W position", 5, 13.5, 6.6),
        new("R5W", 5, 13.5, 5.5),
        new("R10W", 10, 13.5, 11),
        new("T4W", 4, 13.5, 4.4),
        new("W5W", 5, 13.5, 5.5),
        new("WY5W", 5, 13.5, 5.5),
        new("W3W", 3, 13.5, 3.45),
        new("W2.3W", 2.3, 13.5, 2.5),
        new("C5W", 5, 13.5, 5.5),
        new("H21W", 21, 13.5, 26.25),
        new("W21W", 21, 13.5, 26.5),
        new("W16W", 16, 13.5, 21.35),
    ];

    /// <summary>The category of that name, or null.</summary>
    public static LampCategory? Find(string name) => All.FirstOrDefault(c => Names.Same(c.Name, name));
}
