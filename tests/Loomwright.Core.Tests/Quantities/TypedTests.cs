using Loomwright.Quantities;

namespace Loomwright.Tests.Quantities;

public sealed class TypedTests
{
    [Theory]
    [InlineData("12.4 V", Unit.Volt, 12.4)]
    [InlineData("12,4 V", Unit.Volt, 12.4)]
    [InlineData("12,4V", Unit.Volt, 12.4)]
    [InlineData("-5 mV", Unit.Volt, -0.005)]
    [InlineData("−5 mV", Unit.Volt, -0.005)]
    [InlineData("30 A", Unit.Amp, 30)]
    [InlineData("2 mA", Unit.Amp, 0.002)]
    [InlineData("1e3 A", Unit.Amp, 1000)]
    [InlineData("1.5e-3A", Unit.Amp, 0.0015)]
    [InlineData("0.5 mm2", Unit.SquareMillimetre, 0.5)]
    [InlineData("0,5 mm²", Unit.SquareMillimetre, 0.5)]
    [InlineData("12 cm", Unit.Metre, 0.12)]
    [InlineData("1,1m", Unit.Metre, 1.1)]
    [InlineData("200 ms", Unit.Second, 0.2)]
    [InlineData("45 s", Unit.Second, 45)]
    [InlineData("2 min", Unit.Second, 120)]
    [InlineData("35 C", Unit.Celsius, 35)]
    [InlineData("35 °C", Unit.Celsius, 35)]
    [InlineData("-10 C", Unit.Celsius, -10)]
    [InlineData("3 %", Unit.Share, 0.03)]
    [InlineData("20%", Unit.Share, 0.2)]
    [InlineData("10 Ah", Unit.AmpHour, 10)]
    [InlineData("21 w", Unit.Watt, 21)]
    [InlineData("10 mohm", Unit.Ohm, 0.01)]
    [InlineData("10 Mohm", Unit.Ohm, 1e7)]
    [InlineData("4.7 kΩ", Unit.Ohm, 4700)]
    [InlineData("5 \u2126", Unit.Ohm, 5)]
    [InlineData(".5 A", Unit.Amp, 0.5)]
    [InlineData("3.4", Unit.One, 3.4)]
    public void A_quantity_is_read_as_people_write_it(string text, Unit unit, double si)
    {
        var read = Assert.IsType<Typed.Quantity>(Typed.Read(text, unit));
        Assert.Equal(si, read.Si, 1e-12 * Math.Max(1, Math.Abs(si)));
        Assert.False(read.Bare);
    }

    [Theory]
    [InlineData("30", Unit.Amp, 30)]
    [InlineData("0,5", Unit.SquareMillimetre, 0.5)]
    [InlineData("3", Unit.Share, 0.03)]
    public void A_bare_number_is_taken_in_the_documented_unit_and_says_so(string text, Unit unit, double si) =>
        Assert.Equal(new Typed.Quantity(si, Bare: true), Typed.Read(text, unit));

    // ASTM B258: diameter 0.127 mm × 92^((36−n)/39); the printed tables round the diameter first and differ by up to 0.3 %.
    [Theory]
    [InlineData("20 AWG", 0.518)]
    [InlineData("AWG 20", 0.518)]
    [InlineData("18awg", 0.823)]
    [InlineData("16 AWG", 1.31)]
    [InlineData("12 AWG", 3.31)]
    [InlineData("6 AWG", 13.3)]
    [InlineData("0 AWG", 53.5)]
    public void A_gauge_is_the_area_of_its_table_row(string text, double squareMillimetres) =>
        Assert.Equal(new Typed.Quantity(squareMillimetres, Bare: false), Typed.Read(text, Unit.SquareMillimetre));

    [Theory]
    [InlineData("", Unit.Volt)]
    [InlineData("  ", Unit.Volt)]
    [InlineData("V", Unit.Volt)]
    [InlineData("twelve V", Unit.Volt)]
    [InlineData("1.234,5 V", Unit.Volt)]
    [InlineData("1,234.5 V", Unit.Volt)]
    [InlineData("1 000 V", Unit.Volt)]
    [InlineData("1'000 V", Unit.Volt)]
    [InlineData("12 A", Unit.Volt)]
    [InlineData("1 MA", Unit.Amp)]
    [InlineData("1 MV", Unit.Volt)]
    [InlineData("1k", Unit.Ohm)]
    [InlineData("1e999 V", Unit.Volt)]
    [InlineData("NaN", Unit.Volt)]
    [InlineData("Infinity V", Unit.Volt)]
    [InlineData("20.5 AWG", Unit.SquareMillimetre)]
    [InlineData("60 AWG", Unit.SquareMillimetre)]
    [InlineData("35 F", Unit.Celsius)]
    [InlineData("3 V", Unit.One)]
    [InlineData("- V", Unit.Volt)]
    [InlineData(".", Unit.Volt)]
    [InlineData("１２ V", Unit.Volt)]
    public void What_cannot_be_read_says_why_and_what_to_write(string text, Unit unit)
    {
        var problem = Assert.IsType<Typed.Unreadable>(Typed.Read(text, unit));
        Assert.NotEmpty(problem.What);
        Assert.NotEmpty(problem.Cure);
    }

    [Fact]
    public void Whatever_the_fingers_typed_it_is_read_or_refused_and_never_unknown_in_between() =>
        CsCheck.Check.Sample(CsCheck.Gen.Select(CsCheck.Gen.String[CsCheck.Gen.Char["0123456789.,-+eE mVAkΩ%²C"], 0, 12], CsCheck.Gen.Enum<Unit>()), (text, unit) =>
            Typed.Read(text, unit) is not Typed.Quantity read || double.IsFinite(read.Si));
}
