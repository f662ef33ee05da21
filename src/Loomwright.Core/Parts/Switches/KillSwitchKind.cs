using Loomwright.Design;

namespace Loomwright.Parts;

/// <summary>A kill switch of either sense (docs/models/kill-switch.md).</summary>
internal static class KillSwitchKind
{
    private static readonly Pick Stops = new("stops by", "Opening: it carries the coil's feed. Closing: it grounds a magneto.", ["opening", "closing"]) { Required = true };

    public static Kind Kind { get; } = Mount.Able(new(
        "kill switch", "The switch that stops the engine.", [Stops.Parameter, Contact.Closed.Parameter, Contact.Leak.Parameter, Marks.TwoParameter("terminals", "1", "2")], Build));

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
                    Gate = new Gate.ByControl(part.Name, [Stops.Of(part.Settings) == "closing" ? "stop" : "run"]),
                    Off = Contact.Open(part.Settings),
                },
            ],
            Controls = [new Control(part.Name, ["run", "stop"], "run", Momentary: false)],
            Problems = marks.Problems,
            WrongSettings = [new WrongSetting(Stops.Key, Stops.Of(part.Settings) == "closing" ? "opening" : "closing", WrongSetting.Sense)],
        };
    }
}
