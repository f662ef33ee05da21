using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>
/// How a person errs: takes dim for lit, looks away, reads a digit wrong. All chances are judgement, no source; they hold
/// for one look by a careful person in bad light.
/// </summary>
public static class Misreading
{
    /// <summary>On taken for off or off for on.</summary>
    public const double OnOff = 0.02;

    /// <summary>Steady taken for flashing, one rate for another.</summary>
    public const double Flash = 0.03;

    /// <summary>Dim taken for lit or lit for dim.</summary>
    public const double Dim = 0.08;

    /// <summary>A horn, a motor or a click misheard.</summary>
    public const double Heard = 0.01;

    /// <summary>Another control was operated than the one asked for.</summary>
    public const double WrongControl = 0.01;

    /// <summary>A reading that has nothing to do with the point: probe slipped, range wrong.</summary>
    public const double GrossReading = 0.02;

    /// <summary>What is there to see at the thing itself is overlooked, or something wrong seen where nothing is.</summary>
    public const double Overlooked = 0.02;

    /// <summary>Of what is wrongly seen there, the part that is one certain thing among all that could be.</summary>
    public const double Invented = 0.1;

    // Of one lamp by what it does and what is told, worked out once.
    private static readonly double[][] Lamps = [.. Enum.GetValues<Symbol>().Select(t => Enum.GetValues<Symbol>().Select(s => OfLamp(t, s)).ToArray())];

    /// <summary>The chance to be told <paramref name="told"/> when <paramref name="true"/> is there; never 0.</summary>
    public static double Of(Observable observable, byte @true, byte told) => observable.Sense switch
    {
        Sense.Sight when Lamp((Symbol)@true) && Lamp((Symbol)told) => Lamps[@true][told],
        Sense.BoxLight => Lamps[@true][told],
        _ => @true == told ? 1 - Heard : Heard,
    };

    /// <summary>The chance density of a reading where <paramref name="volts"/> are expected, per volt: Student's t with four degrees of freedom, and a floor over the meter's range.</summary>
    public static double Reading(double volts, double amps, double told)
    {
        var spread = Spread(volts, amps);
        var t = (told - volts) / spread;
        var density = 0.375 / spread * Math.Pow(1 + (t * t / 4), -2.5);
        return ((1 - GrossReading) * density) + (GrossReading / 30);
    }

    /// <summary>
    /// One standard deviation of meter (1 % and two digits) and model together, in volts: contacts of 15 mΩ that all current goes
    /// through, lamps that draw more or less where a point lies between plus and minus (judgement).
    /// </summary>
    /// <param name="volts">Expected.</param>
    /// <param name="amps">What the supply delivers.</param>
    public static double Spread(double volts, double amps)
    {
        var size = Math.Abs(volts);
        var meter = (0.01 * size) + 0.02;
        var contacts = (0.015 * Math.Abs(amps)) + 0.02;
        var lamps = (0.01 * size) + (0.06 * size * Math.Max(0, 1 - (size / 12)));
        return Math.Sqrt((meter * meter) + (contacts * contacts) + (lamps * lamps));
    }

    private static bool Lamp(Symbol symbol) => symbol is Symbol.Dark or Symbol.Dim or Symbol.Lit or Symbol.Flashing or Symbol.FlashingFast or Symbol.FlashingSlowly;

    private static bool Flashes(Symbol symbol) => symbol is Symbol.Flashing or Symbol.FlashingFast or Symbol.FlashingSlowly;

    // Each wrong sign gets its share of what is left by how near it is to the true one.
    private static double OfLamp(Symbol @true, Symbol told)
    {
        if (@true == told)
        {
            return 1 - Wrong(@true).Sum();
        }

        return (Flashes(@true), Flashes(told)) switch
        {
            (true, true) => Flash / 2,
            (true, false) or (false, true) => Flash / 3,
            _ => @true is Symbol.Dark || told is Symbol.Dark ? @true is Symbol.Dim || told is Symbol.Dim ? Dim / 2 : OnOff : Dim,
        };
    }

    private static IEnumerable<double> Wrong(Symbol @true) =>
        Enum.GetValues<Symbol>().Where(s => s != @true && Lamp(s)).Select(s => OfLamp(@true, s));
}
