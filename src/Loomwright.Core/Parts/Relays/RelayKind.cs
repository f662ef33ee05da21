using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A plain cube relay (docs/models/relay.md).</summary>
internal static class RelayKind
{
    private static readonly Pick Contacts = new("contacts", "What it joins 30 to: 87 when pulled in, 87a when not, or both in turn.", ["normally open", "changeover", "normally closed"]);
    private static readonly Pick Across = new("across coil", "What takes the spike of its coil; a diode makes the coil's two ends differ.", ["nothing", "diode", "resistor"]);
    private static readonly Amount Winding = new("coil resistance", "Of its coil.", Unit.Ohm, 1, 10_000, 85);
    private static readonly Amount Resistor = new("resistor", "Of the resistor across its coil.", Unit.Ohm, 10, 100_000, 680);
    private static readonly Parameter Marked = new("terminals", "The marks of coil +, coil -, common and contacts, in this order. Default 86, 85, 30, then 87 or 87a or both.", new Form.Names());

    public static Kind Kind { get; } = new(
        "relay",
        "A relay: a small current through its coil moves a contact for a large one.",
        [Contacts.Parameter, Across.Parameter, Winding.Parameter, Resistor.Parameter, Coil.PullIn.Parameter, Coil.DropOut.Parameter, Parts.Contact.Closed.Parameter, Parts.Contact.Leak.Parameter, Marked],
        Build);

    private static Model Build(Part part)
    {
        var settings = part.Settings;
        var contacts = Contacts.Of(settings);
        ImmutableArray<string> usual = contacts switch
        {
            "changeover" => ["86", "85", "30", "87", "87a"],
            "normally closed" => ["86", "85", "30", "87a"],
            _ => ["86", "85", "30", "87"],
        };
        var marks = Marks.Of(settings, Marked.Key, usual);
        var (plus, minus, common) = (marks.Known[0], marks.Known[1], marks.Known[2]);
        var closed = new Ohms(Parts.Contact.Closed.Of(settings));
        var elements = ImmutableArray.CreateBuilder<Element>();
        elements.Add(new Element("coil", plus, minus, new Ohms(Winding.Of(settings))));
        if (Across.Of(settings) == "diode")
        {
            elements.Add(new Element("coil diode", minus, plus, Diode.Silicon));
        }
        else if (Across.Of(settings) == "resistor")
        {
            elements.Add(new Element("coil resistor", plus, minus, new Ohms(Resistor.Of(settings))));
        }

        if (contacts != "normally closed")
        {
            elements.Add(Coil.Contact("working contact", common, marks.Known[3], closed, whenPulledIn: true) with { Off = Parts.Contact.Open(settings) });
        }

        if (contacts != "normally open")
        {
            elements.Add(Coil.Contact("resting contact", common, marks.Known[^1], closed, whenPulledIn: false) with { Off = Parts.Contact.Open(settings) });
        }

        return new Model
        {
            Terminals = [.. marks.Known.Select((m, i) => new Terminal(m, i switch { 0 => Role.Plus, 1 => Role.Minus, _ => Role.Lead }))],
            Elements = elements.ToImmutable(),
            Relays = [Coil.Of(settings, Winding.Of(settings), marks)],
            Polarity = Across.Of(settings) == "diode" ? (plus, minus) : null,
            Problems = marks.Problems,
        };
    }
}
