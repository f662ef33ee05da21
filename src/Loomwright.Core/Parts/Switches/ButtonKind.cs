using Loomwright.Design;

namespace Loomwright.Parts;

/// <summary>A push button (docs/models/button.md).</summary>
internal static class ButtonKind
{
    private static readonly Pick Rests = new("rests", "How its contact is when nobody presses it.", ["open", "closed"]);

    public static Kind Kind { get; } = Mount.Able(new(
        "button", "A button that springs back, with one contact.", [Rests.Parameter, Contact.Closed.Parameter, Contact.Leak.Parameter, Marks.TwoParameter("terminals", "1", "2")], Build));

    private static Model Build(Part part)
    {
        var marks = Marks.Two(part.Settings, "terminals", "1", "2");
        return new Model
        {
            Terminals = [.. marks.Known.Select(m => new Terminal(m, Role.Lead))],
            Elements =
            [
                new Element("contact", marks.Known[0], marks.Known[1], new Ohms(Contact.Closed.Of(part.Settings)))
                {
                    Gate = new Gate.ByControl(part.Name, [Rests.Of(part.Settings) == "closed" ? "released" : "pressed"]),
                    Off = Contact.Open(part.Settings),
                },
            ],
            Controls = [new Control(part.Name, ["released", "pressed"], "released", Momentary: true)],
            Problems = marks.Problems,
        };
    }
}
