using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>Everything that simply takes its current: a resistance at its rated volts, and what a person can tell of it (docs/models/load.md).</summary>
internal static class LoadKinds
{
    // Below these shares of its current a motor stands still, a horn is silent and any other load is of no use (judgement, no source).
    private const double TurnsAboveShare = 0.4;
    private const double SoundsAboveShare = 0.6;
    private const double WorksAboveShare = 0.5;

    private static readonly Amount RatedVolts = new("rated volts", "The volts its current is stated at.", Unit.Volt, 1, 30, 12);
    private static readonly Amount CrankVolts = RatedVolts with { Default = 10 };

    public static Kind Load { get; } = Kind("load", "Anything that takes a current: a horn relay's box, a radio, a clock.", "+", "-", 1, Works);

    public static Kind Coil { get; } = Kind("ignition coil", "An ignition coil as a load.", "15", "1", 3.5, Works);

    public static Kind Injection { get; } = Kind("injection unit", "An injection unit as a load.", "+", "-", 2, Works);

    public static Kind Pump { get; } = Kind("fuel pump", "An electric fuel pump.", "+", "-", 4, Turns);

    public static Kind Fan { get; } = Kind("fan", "A radiator fan.", "+", "-", 7, Turns);

    public static Kind Grips { get; } = Kind("heated grips", "Heated grips, both together.", "+", "-", 3, Works);

    public static Kind AirHorn { get; } = Kind("air horn", "The compressor of an air horn; it belongs behind a relay.", "+", "-", 18, Sounds);

    public static Kind Starter { get; } = Kind("starter", "A starter motor: its brushes, without solenoid and relay.", "+", "-", 120, Turns, CrankVolts);

    private static Sight Works(double amps) => new Sight.Load("", "load", amps * WorksAboveShare);

    private static Sight Turns(double amps) => new Sight.Motor("", "load", amps * TurnsAboveShare);

    private static Sight Sounds(double amps) => new Sight.Horn("", "load", amps * SoundsAboveShare);

    private static Kind Kind(string name, string meaning, string first, string second, double usualAmps, Func<double, Sight> sight, Amount? volts = null)
    {
        var current = new Amount("current", "What it takes at its rated volts.", Unit.Amp, 0.001, 1000, usualAmps);
        var rated = volts ?? RatedVolts;
        return Mount.Able(new(name, meaning, [current.Parameter, rated.Parameter, Marks.TwoParameter("terminals", first, second)], part =>
        {
            var marks = Marks.Two(part.Settings, "terminals", first, second);
            var amps = current.Of(part.Settings);
            return new Model
            {
                Terminals = [new Terminal(marks.Known[0], Role.Plus), new Terminal(marks.Known[1], Role.Minus)],
                Elements = [new Element("load", marks.Known[0], marks.Known[1], new Ohms(rated.Of(part.Settings) / amps))],
                Sights = [sight(amps)],
                Problems = marks.Problems,
            };
        }));
    }
}
