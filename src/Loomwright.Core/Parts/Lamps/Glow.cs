using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>One thing that lights: its curve warm and cold, and how its light follows.</summary>
internal sealed record Glow(Curve Curve, Curve? Cold, LightLaw Law)
{
    private static readonly Amount Filament = new("filament", "Watts of a filament at its rated volts.", Unit.Watt, 0.1, 300);
    private static readonly Amount Led = new("led", "Watts of an LED lamp at its rated volts.", Unit.Watt, 0.01, 200);

    private static readonly Parameter Category = new(
        "category", "A standard filament lamp; its watts and test voltage are then known.", new Form.Choice([.. LampCategory.All.Select(c => c.Name)]));

    private static readonly Amount RatedVolts = new("rated volts", "The volts its watts are stated at.", Unit.Volt, 1, 30, 12);
    private static readonly Amount HotOverCold = new("hot over cold", "How many times the resistance of a cold filament a hot one has.", Unit.One, 5, 20, 14);
    private static readonly Pick Drive = new("led drive", "What sets the LED's current: a resistor, or a driver that holds it.", ["resistor", "driver"]);

    // A driver made for 12 V: nothing below 6 V, full from 8 V (judgement, no source).
    private const double DriverStartsShare = 0.5;
    private const double DriverFullShare = 2.0 / 3;

    /// <summary>What a lamp or one of its elements may say of its light.</summary>
    public static ImmutableArray<Parameter> Parameters { get; } =
        [Filament.Parameter, Led.Parameter, Category, RatedVolts.Parameter, HotOverCold.Parameter, Drive.Parameter];

    /// <summary>Whether anything here says what lights.</summary>
    public static bool IsIn(Settings settings) => settings[Filament.Key] is not null || settings[Led.Key] is not null || settings[Category.Key] is not null;

    /// <summary>Reads it; null and a problem when it says nothing or two things at once.</summary>
    public static Glow? Of(Settings settings, string path, Marks marks)
    {
        var category = settings.Word(Category.Key) is { } name ? LampCategory.Find(name) : null;
        var filamentWatts = Filament.Given(settings);
        var ledWatts = Led.Given(settings);
        if (ledWatts is not null && (filamentWatts is not null || category is not null))
        {
            marks.Complain(path, "it is a filament and an LED at once", "keep one of the two, or name two elements");
            return null;
        }

        if (ledWatts is { } watts)
        {
            return new Glow(LedCurve(settings, watts), null, LightLaw.Led);
        }

        var filament = category is not null ? new Filament(category.WattsAtTest, category.TestVolts, HotOverCold.Of(settings))
            : filamentWatts is { } plain ? new Filament(plain, RatedVolts.Of(settings), HotOverCold.Of(settings))
            : null;
        if (filament is null)
        {
            marks.Complain(path, "it does not say what lights", "write filament: 21 W, led: 3 W or category: P21W");
            return null;
        }

        return new Glow(filament, filament.Cold(), LightLaw.Filament);
    }

    private static Curve LedCurve(Settings settings, double watts)
    {
        var volts = RatedVolts.Of(settings);
        return Drive.Of(settings) == "driver"
            ? new DriverLed(watts / volts, volts * DriverFullShare, volts * DriverStartsShare)
            : Diode.LedLamp(watts, volts);
    }
}
