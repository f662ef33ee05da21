using System.Globalization;
using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.Sizing;

/// <summary>How the tables here are written down: sizes in one line, amps in the next.</summary>
internal static class Column
{
    /// <summary>Gauges: <c>18 16 14</c>.</summary>
    public static AmpacityColumn Gauges(double? classCelsius, double? baseCelsius, string gauges, double[] amps, double?[]? breakers = null, string memory = "")
    {
        var unsure = memory.Split(' ');
        return new(classCelsius, baseCelsius, [.. gauges.Split(' ').Select((gauge, i) =>
        {
            var row = ConductorTable.Awg.Rows.First(r => r.Name == $"{gauge} AWG");
            return new AmpacityRow(row.Name, row.Size.SquareMillimetres, amps[i], breakers?[i], unsure.Contains(gauge));
        })]);
    }

    /// <summary>Sizes in mm²: <c>0.75 1 1.5</c>.</summary>
    public static AmpacityColumn Metric(double? classCelsius, double? baseCelsius, string sizes, params double[] amps) =>
        new(classCelsius, baseCelsius, [.. sizes.Split(' ').Select((size, i) =>
        {
            var area = new CrossSection(double.Parse(size, CultureInfo.InvariantCulture));
            return new AmpacityRow(area.ToString(), area.SquareMillimetres, amps[i], null, FromMemory: false);
        })]);
}
