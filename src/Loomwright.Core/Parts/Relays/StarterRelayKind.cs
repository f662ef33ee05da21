using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A starter relay: the heavy contact between battery and starter (docs/models/starter-relay.md).</summary>
internal static class StarterRelayKind
{
    private const double RatedVolts = 12;

    private static readonly Amount CoilCurrent = new("coil current", "What its coil takes at 12 V.", Unit.Amp, 0.1, 20, 4);
    private static readonly Amount Heavy = new("contact", "Resistance of its closed contact; a worn one has more.", Unit.Ohm, 0.00001, 10, 0.0005);
    private static readonly Parameter Marked = new("terminals", "The marks of battery, motor, coil + and coil -, in this order. Default 30, 45, 50 and 31; the last is body when it is mounted.", new Form.Names());

    public static Kind Kind { get; } = Mount.Able(new(
        "starter relay", "A relay for the starter current.", [CoilCurrent.Parameter, Coil.PullIn.Parameter, Coil.DropOut.Parameter, Heavy.Parameter, Contact.Leak.Parameter, Marked], Build));

    private static Model Build(Part part)
    {
        var settings = part.Settings;
        var marks = Marks.Of(settings, Marked.Key, ["30", "45", "50", Mount.IsIn(settings) ? Mount.Case : "31"]);
        var ohms = RatedVolts / CoilCurrent.Of(settings);
        return new Model
        {
            Terminals = [.. marks.Known.Select(m => new Terminal(m, Role.Lead))],
            Elements =
            [
                new Element("coil", marks.Known[2], marks.Known[3], new Ohms(ohms)),
                Coil.Contact("contact", marks.Known[0], marks.Known[1], new Ohms(Heavy.Of(settings)), whenPulledIn: true) with { Off = Contact.Open(settings) },
            ],
            Relays = [Coil.Of(settings, ohms, marks)],
            Problems = marks.Problems,
        };
    }
}
