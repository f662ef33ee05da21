using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>Senders as loads: what they tell is not simulated (docs/models/speed-sender.md, docs/models/ohm-sender.md).</summary>
internal static class SenderKinds
{
    private const double RatedVolts = 12;

    // An open-collector output with its pull-up (judgement, no source).
    private const double SignalOhms = 10_000;

    private static readonly Amount Current = new("current", "What its electronics take at 12 V.", Unit.Amp, 0.0001, 1, 0.015);
    private static readonly Parameter Marked = new("terminals", "The marks of its supply, ground and signal leads, in this order. Default +, - and signal.", new Form.Names());
    private static readonly Amount Resistance = new("resistance", "What it shows at the moment: a fuel or temperature sender has some 10 to 200 Ω.", Unit.Ohm, 0.1, 1e6, 90);

    public static Kind Speed { get; } = new("speed sender", "A wheel or gearbox sender that gives pulses; a load of a few milliamps.", [Current.Parameter, Marked], BuildSpeed);

    public static Kind Ohm { get; } = Mount.Able(new(
        "ohm sender", "A fuel or temperature sender: a resistance to ground.", [Resistance.Parameter, Marks.TwoParameter("terminals", "signal", "-")], BuildOhm));

    private static Model BuildSpeed(Part part)
    {
        var marks = Marks.Of(part.Settings, Marked.Key, ["+", "-", "signal"]);
        var (plus, minus, signal) = (marks.Known[0], marks.Known[1], marks.Known[2]);
        return new Model
        {
            Terminals = [new Terminal(plus, Role.Plus), new Terminal(minus, Role.Minus), new Terminal(signal, Role.Output)],
            Elements =
            [
                new Element("electronics", plus, minus, new Ohms(RatedVolts / Current.Of(part.Settings))),
                new Element("pull up", plus, signal, new Ohms(SignalOhms)),
            ],
            Polarity = (plus, minus),
            Problems = marks.Problems,
        };
    }

    private static Model BuildOhm(Part part)
    {
        var marks = Marks.Two(part.Settings, "terminals", "signal", "-");
        return new Model
        {
            Terminals = [.. marks.Known.Select(m => new Terminal(m, Role.Lead))],
            Elements = [new Element("track", marks.Known[0], marks.Known[1], new Ohms(Resistance.Of(part.Settings)))],
            Problems = marks.Problems,
        };
    }
}
