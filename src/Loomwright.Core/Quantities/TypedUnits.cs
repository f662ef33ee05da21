namespace Loomwright.Quantities;

/// <summary>The spellings of the units people type, and what each is in the base unit.</summary>
internal static class TypedUnits
{
    private static readonly (string Spelling, double Factor)[] Ohms =
        [("Ω", 1), ("\u2126", 1), ("ohm", 1), ("ohms", 1), ("mΩ", 1e-3), ("mohm", 1e-3), ("kΩ", 1e3), ("kohm", 1e3), ("MΩ", 1e6), ("Mohm", 1e6)];

    /// <summary>The value in the base unit, or null when the unit does not belong.</summary>
    public static double? Convert(Unit unit, double number, string written)
    {
        if (unit == Unit.SquareMillimetre && string.Equals(written, "awg", StringComparison.OrdinalIgnoreCase))
        {
            return number is >= 0 and <= 40 && number == Math.Floor(number) ? SquareMillimetresOfAwg((int)number) : null;
        }

        foreach (var (spelling, factor) in Of(unit))
        {
            if (Same(spelling, written))
            {
                return number * factor;
            }
        }

        return null;
    }

    /// <summary>A number without a unit, in the documented one; a share is taken in percent.</summary>
    public static double Bare(Unit unit, double number) => unit == Unit.Share ? number / 100 : number;

    /// <summary>The units that belong, as a list to show.</summary>
    public static string Known(Unit unit) => unit == Unit.One
        ? "no unit"
        : string.Join(", ", Of(unit).Select(u => u.Spelling).Where(s => s != "\u2126")) + (unit == Unit.SquareMillimetre ? ", AWG" : "");

    /// <summary>The unit a bare number is taken in.</summary>
    public static string Documented(Unit unit) => unit == Unit.One ? "" : Of(unit)[0].Spelling;

    /// <summary>A bound in the documented unit, as a person would write it.</summary>
    public static string Show(Unit unit, double si) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{(unit == Unit.Share ? si * 100 : si):G6} {Documented(unit)}").TrimEnd();

    /// <summary>A regular expression (ECMA 262) for the text of a quantity.</summary>
    public static string Pattern(Unit unit)
    {
        const string Number = @"[+−-]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d+)?";
        var units = string.Join('|', Of(unit).Select(u => u.Spelling).Concat(unit == Unit.SquareMillimetre ? ["AWG"] : []));
        var gauge = unit == Unit.SquareMillimetre ? @"|AWG\s*\d+" : "";
        return units.Length == 0 ? $@"^\s*{Number}\s*$" : $@"^\s*({Number}\s*({units})?{gauge})\s*$";
    }

    /// <summary>What a well written one looks like.</summary>
    public static string Example(Unit unit) => unit switch
    {
        Unit.Volt => "12.4 V",
        Unit.Amp => "5 A",
        Unit.Ohm => "30 ohm",
        Unit.Watt => "21 W",
        Unit.Metre => "1.1 m",
        Unit.SquareMillimetre => "0.5 mm2",
        Unit.Celsius => "35 C",
        Unit.Second => "200 ms",
        Unit.AmpHour => "10 Ah",
        Unit.Share => "20 %",
        _ => "1.5",
    };

    // m and M differ by 10⁹, so a first letter m keeps its case; all other letters are as people happen to type them.
    private static bool Same(string spelling, string written) =>
        string.Equals(spelling, written, StringComparison.OrdinalIgnoreCase) && (spelling.Length < 2 || spelling[0] is not ('m' or 'M') || spelling[0] == written[0]);

    /// <summary>Area of a solid conductor of the gauge, three significant figures (ASTM B258: diameter 0.127 mm × 92^((36−n)/39)).</summary>
    private static double SquareMillimetresOfAwg(int gauge)
    {
        var diameterMillimetres = 0.127 * Math.Pow(92, (36 - gauge) / 39.0);
        var area = Math.PI / 4 * diameterMillimetres * diameterMillimetres;
        var places = 2 - (int)Math.Floor(Math.Log10(area));
        return places >= 0 ? Math.Round(area, places) : Math.Round(area / 10) * 10;
    }

    private static (string Spelling, double Factor)[] Of(Unit unit) => unit switch
    {
        Unit.Volt => [("V", 1), ("mV", 1e-3), ("kV", 1e3)],
        Unit.Amp => [("A", 1), ("mA", 1e-3), ("µA", 1e-6), ("uA", 1e-6)],
        Unit.Ohm => Ohms,
        Unit.Watt => [("W", 1), ("mW", 1e-3), ("kW", 1e3)],
        Unit.Metre => [("m", 1), ("cm", 1e-2), ("mm", 1e-3)],
        Unit.SquareMillimetre => [("mm2", 1), ("mm²", 1), ("sq mm", 1)],
        Unit.Celsius => [("C", 1), ("°C", 1), ("deg C", 1)],
        Unit.Second => [("s", 1), ("ms", 1e-3), ("min", 60), ("h", 3600)],
        Unit.AmpHour => [("Ah", 1), ("mAh", 1e-3)],
        Unit.Share => [("%", 0.01)],
        _ => [],
    };
}
