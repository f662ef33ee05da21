using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A silicon rectifier diode (docs/models/diode.md).</summary>
internal static class DiodeKind
{
    private static readonly Amount Forward = new("forward", "Volts across it when it conducts.", Unit.Volt, 0.2, 2, 0.7);

    public static Kind Kind { get; } = new(
        "diode", "A diode: lets current through from anode to cathode only.", [Forward.Parameter, Marks.TwoParameter("terminals", "anode", "cathode")], Build);

    private static Model Build(Part part)
    {
        var marks = Marks.Two(part.Settings, "terminals", "anode", "cathode");
        var forwardVolts = Forward.Of(part.Settings);
        var silicon = Diode.Silicon;
        return new Model
        {
            Terminals = [new Terminal(marks.Known[0], Role.Plus), new Terminal(marks.Known[1], Role.Minus)],
            Elements =
            [
                new Element("junction", marks.Known[0], marks.Known[1],
                    new Diode(silicon.OnSiemens, forwardVolts, Math.Min(silicon.KneeVolts, forwardVolts / 20), silicon.OffSiemens)),
            ],
            Polarity = (marks.Known[0], marks.Known[1]),
            Problems = marks.Problems,
        };
    }
}
