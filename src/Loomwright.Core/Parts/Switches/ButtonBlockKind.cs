using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>A block of buttons that tells a controller over one lead or a bus which are pressed (docs/models/button-block.md).</summary>
internal static class ButtonBlockKind
{
    private const double RatedVolts = 12;

    // Alive from half its own current (judgement, no source).
    private const double AliveShare = 0.5;
    private const double DeadShare = 0.4;

    private static readonly Parameter Buttons = new("buttons", "Your names for its buttons, in the order the maker numbers them.", new Form.Names()) { Required = true };
    private static readonly Pick By = new("reports by", "One data lead, a resistor for each button, or a two-wire bus.", ["data lead", "resistor ladder", "bus"]) { Required = true };
    private static readonly Amount Draw = new("draw", "What its electronics take at 12 V; a resistor ladder has none.", Unit.Amp, 1e-5, 1, 0.01);

    private static readonly Parameter Resistances = new(
        "resistances", "Of a resistor ladder: what each button joins the data lead to ground through. Left out: 330 Ω, and 1.8 times as much from button to button.",
        new Form.Each(new Form.Quantity(Unit.Ohm, 1, 1e6)));

    private static readonly Parameter Marked = new(
        "terminals", "Its leads in this order: supply, ground, data; data, ground for a ladder; supply, ground and the two of a bus. Default +, -, data, or data, -, or +, -, high, low.", new Form.Names());

    public static Kind Kind { get; } = new(
        "button block", "A block of buttons that reports over a data lead, a resistor ladder or a bus; each button is the control BLOCK BUTTON.",
        [Buttons, By.Parameter, Draw.Parameter, Resistances, Marked], Build);

    private static Model Build(Part part)
    {
        var settings = part.Settings;
        var by = By.Of(settings);
        var marks = Marks.Of(settings, Marked.Key, by switch { "data lead" => ["+", "-", "data"], "bus" => ["+", "-", "high", "low"], _ => ["data", "-"] });
        ImmutableArray<string> buttons = [.. settings.Words(Buttons.Key).Distinct(Names.Comparer)];
        if (buttons.IsEmpty)
        {
            marks.Complain(Buttons.Key, "it has no button", "name its buttons, as in [left, right, horn]");
        }

        ImmutableArray<Control> controls = [.. buttons.Select(b => new Control($"{part.Name} {b}", ["released", "pressed"], "released", Momentary: true))];
        var model = new Model
        {
            Terminals = [.. marks.Known.Select((m, i) => new Terminal(m, (by == "resistor ladder" ? i == 0 : i > 1) ? Role.Output : Role.Lead))],
            Controls = controls,
            Problems = marks.Problems,
        };
        return by == "resistor ladder" ? Ladder(model, buttons, settings, marks) : Talking(model, marks.Known, Draw.Of(settings));
    }

    private static Model Ladder(Model model, ImmutableArray<string> buttons, Settings settings, Marks marks)
    {
        var own = settings.Group(Resistances.Key);
        foreach (var (name, _) in own.Entries.Where(e => !buttons.Contains(e.Key, Names.Comparer)))
        {
            marks.Complain($"{Resistances.Key}/{name}", $"there is no button {name}", Marks.Cure(name, buttons, "add it to the buttons"));
        }

        return model with
        {
            Elements =
            [
                .. buttons.Select((b, i) => new Element($"{b} resistor", marks.Known[0], marks.Known[1], new Ohms(Math.Clamp(own.Number(b) is { } ohms && double.IsFinite(ohms) ? ohms : DataInput.UsualOhms(i + 1), 1, 1e6)))
                {
                    Gate = new Gate.ByControl(model.Controls[i].Name, ["pressed"]),
                }),
            ],
            Problems = marks.Problems,
        };
    }

    private static Model Talking(Model model, ImmutableArray<string> marks, double drawAmps)
    {
        var electronics = new Element("electronics", marks[0], marks[1], new Ohms(RatedVolts / drawAmps));
        var bus = marks.Length > 3;
        return model with
        {
            Elements = bus ? [electronics, new Element("end resistor", marks[2], marks[3], new Ohms(DataInput.BusEndOhms))] : [electronics],
            Relays = [new Relay("electronics", ["electronics"], AliveShare * drawAmps, DeadShare * drawAmps) { Clicks = false }],
            Block = new ButtonBlock([.. model.Controls.Select(c => c.Name)], marks[2], bus ? marks[3] : null, "electronics"),
            Polarity = (marks[0], marks[1]),
        };
    }
}
