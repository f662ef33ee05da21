using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Sizing;
using static Loomwright.Tests.PublishedRows;

namespace Loomwright.Tests.Published;

/// <summary>Copper and tungsten by the sources that print them, tests/published/01-copper-constants.csv.</summary>
public sealed class CopperFigures
{
    private const string File = "01-copper-constants.csv";

    // They print 1.678 to 1.787e-8 Ω·m and 0.0039 to 0.004041 per kelvin; one conductor cannot be all of them.
    private const double SpanOfSources = 0.04;
    private const double SquareMetresPerCircularMil = Math.PI / 4 * 25.4e-6 * 25.4e-6;

    [Fact]
    public void Copper_is_that_of_the_source_each_table_of_conductors_comes_from() =>
        Each(File, PublishedTable.Read(File).Rows, SaysMemory, Holds);

    private static void Holds(PublishedRow row)
    {
        var value = row.Number("value");
        switch (row["quantity"], row["unit"])
        {
            case ("rho20 copper IACS", _):
                Assert.Equal(Copper.Resistivity * 1e-6, value, 1e-12);
                break;
            case ("alpha20 copper IACS", _):
                Assert.Equal(value, ConductorTable.Iso6722.PerKelvin);
                Assert.Equal(value, ConductorTable.Awg.PerKelvin);
                break;
            case ("inferred zero-resistance temperature copper", _):
                // FAA: R20 = RT · 254.5/(234.5 + T), for the table of the same circular.
                Assert.Equal(Copper.ZeroCelsius, -value);
                var wire = new Conductor(ConductorTable.Aircraft, ConductorTable.Aircraft.Rows[5], SizeMatch.Listed);
                Assert.Equal((80 - value) / (20 - value), wire.Of(new Length(1), new Temperature(80)).Ohms / wire.Of(new Length(1), new Temperature(20)).Ohms, 1e-9);
                break;
            case ("alpha20 copper (conversion factors)", _):
                Assert.Equal(value, ConductorTable.Iec60228.PerKelvin);
                break;
            case ("rho20 copper", "ohm*m"):
                Near(Copper.Resistivity * 1e-6, value);
                break;
            case ("rho20 copper", "ohm*cmil/ft"):
                // The same book prints 1.678e-8 Ω·m as well: four figures.
                Assert.Equal(1.678e-8, value * SquareMetresPerCircularMil / 0.3048, 1e-11);
                break;
            case ("alpha20 copper", _):
                Near(Copper.PerKelvin, value);
                break;
            case ("conductivity copper, wire-choice formula", _):
                Near(Copper.Resistivity, 1 / value);

                // MSC-F2 of worked-examples/formulas.csv: 18 m, 2.1 A, 0.6 V both ways, and the next standard size is 2.5 mm².
                Assert.Equal("2.5 mm²", Thinnest(["1.5 mm²", "2.5 mm²", "4 mm²"], ConductorTable.Iso6722, 2.1, 36, 0.6));
                break;
            case ("K copper, wire-choice formula", _):
                Near(Copper.Resistivity * 1e-6, value * SquareMetresPerCircularMil / 0.3048);

                // MSC-F4b: 10 A over 21 ft, 1.2 V, and the next larger size is 16 AWG.
                Assert.Equal("16 AWG", Thinnest(["18 AWG", "16 AWG", "14 AWG"], ConductorTable.Awg, 10, 21 * 0.3048, 1.2));
                break;
            case ("alpha20 tungsten", _):
                // 20 to 2850 °C, as UPH-F2 of the worked examples: the straight line gives the hot resistance within the span lamps show.
                Assert.InRange(1 + (value * 2830), 10, 15);
                Assert.InRange(new Filament(55, 12).HotOverCold / (1 + (value * 2830)), 0.9, 1.1);
                break;
            case ("density copper", _):
                // Heat stored over density is the specific heat of copper, 0.385 J/(g·K) in any table, from memory.
                Assert.InRange(Copper.JoulesPerKelvin / value, 0.375, 0.395);
                break;
            default:
                PublishedPage.SaysWhyNot(File, row["quantity"]);
                break;
        }
    }

    private static void Near(double ours, double printed) => Assert.InRange(ours / printed, 1 - SpanOfSources, 1 + SpanOfSources);

    private static string? Thinnest(string[] listed, ConductorTable table, double amps, double metres, double most) =>
        DropLimit.Thinnest(listed.Select(n => table.Rows.Single(r => r.Name == n)), new Current(amps), new Length(metres), new Voltage(most))?.Name;
}
