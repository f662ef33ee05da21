using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>An alternator with its regulator/rectifier (docs/models/alternator.md).</summary>
internal static class AlternatorKind
{
    // Winding and rectifier together, as the regulator sees them (judgement, no source).
    private const double SeriesOhms = 0.020;
    private const double LeakAtVolts = 12;

    private static readonly Amount Regulates = new("regulates at", "Where its regulator holds the volts.", Unit.Volt, 12, 16, 14.2);
    private static readonly Amount Power = new("power", "What it gives while riding.", Unit.Watt, 10, 2000, 250);
    private static readonly Amount Idle = new("at idle", "The share of it left at idle: 30 to 50 %.", Unit.Share, 0.01, 1, 0.4);
    private static readonly Amount Drain = new("key-off draw", "What leaks back through its rectifier with the engine stopped, at 12 V.", Unit.Amp, 1e-6, 0.1, 0.0003);

    public static Kind Kind { get; } = Mount.Able(new(
        "alternator",
        "An alternator with regulator and rectifier; how much it gives depends on the control engine: stopped, idle or riding.",
        [Regulates.Parameter, Power.Parameter, Idle.Parameter, Drain.Parameter, Marks.TwoParameter("terminals", "B+", "-")],
        Build));

    private static Model Build(Part part)
    {
        var settings = part.Settings;
        var marks = Marks.Two(settings, "terminals", "B+", "-");
        var (plus, minus) = (marks.Known[0], marks.Known[1]);
        var volts = Regulates.Of(settings);
        var ridingAmps = Power.Of(settings) / volts;
        Element Source(string position, double amps) => new($"charging {position}", plus, minus, new LimitedSource(volts, SeriesOhms, amps)) { Gate = new Gate.ByControl(Engine.Control.Name, [position]) };
        return new Model
        {
            Terminals = [new Terminal(plus, Role.Plus), new Terminal(minus, Role.Minus)],
            Elements =
            [
                Source(Engine.Idle, ridingAmps * Idle.Of(settings)),
                Source(Engine.Riding, ridingAmps),
                new Element("rectifier leakage", plus, minus, new Ohms(LeakAtVolts / Drain.Of(settings))),
            ],
            Charging = [$"charging {Engine.Idle}", $"charging {Engine.Riding}"],
            Controls = [Engine.Control],
            Polarity = (plus, minus),
            WrongSettings = [new WrongSetting(Regulates.Key, "15.8 V", WrongSetting.Chosen), new WrongSetting(Regulates.Key, "12.8 V", WrongSetting.Chosen)],
            Problems = marks.Problems,
        };
    }
}
