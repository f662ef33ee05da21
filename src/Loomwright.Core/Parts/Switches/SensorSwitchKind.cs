using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>A switch that the machine moves, or a lever with it: neutral, oil, stand, clutch, brakes (docs/models/sensor-switch.md).</summary>
internal static class SensorSwitchKind
{
    private static readonly ImmutableArray<Sense> Senses =
    [
        new("neutral", ["neutral", "in gear"], ClosedAtRest: true, Momentary: false),
        new("oil", ["no pressure", "pressure"], ClosedAtRest: true, Momentary: false),
        new("side stand", ["down", "up"], ClosedAtRest: false, Momentary: false),
        new("clutch", ["released", "pulled"], ClosedAtRest: false, Momentary: true),
        new("front brake", ["released", "pulled"], ClosedAtRest: false, Momentary: true),
        new("rear brake", ["released", "pressed"], ClosedAtRest: false, Momentary: true),
    ];

    private static readonly Pick What = new("senses", "What moves it.", [.. Senses.Select(s => s.Name)]) { Required = true };

    private static readonly Parameter Rests = new(
        "rests", "How its contact is at rest: in neutral, without oil pressure, stand down, lever released. Left out: closed for neutral and oil, open for the others.", new Form.Choice(["open", "closed"]));

    private static readonly Parameter Follows = new(
        "follows", "For oil: the control engine that an alternator brings, instead of one of its own; there is pressure while it runs.", new Form.Choice([Engine.Control.Name]));

    public static Kind Kind { get; } = Mount.Able(new(
        "sensor switch",
        "A switch moved by gearbox, oil, stand, clutch or brake.",
        [What.Parameter, Rests, Follows, Contact.Closed.Parameter, Contact.Leak.Parameter, Marks.TwoParameter("terminals", "1", "2")],
        Build));

    private static Model Build(Part part)
    {
        var settings = part.Settings;
        var marks = Marks.Two(settings, "terminals", "1", "2");
        var sense = Senses.First(s => s.Name == What.Of(settings));
        var follows = settings.Word(Follows.Key) is not null;
        if (follows && sense.Name != "oil")
        {
            marks.Complain(Follows.Key, $"a {sense.Name} switch does not follow the engine", "leave follows out");
        }

        var control = follows && sense.Name == "oil"
            ? Engine.Control
            : new Control(part.Name, sense.Positions, sense.Positions[0], sense.Momentary);
        var closed = settings.Word(Rests.Key) is { } word ? Names.Same(word, "closed") : sense.ClosedAtRest;
        return new Model
        {
            Terminals = [.. marks.Known.Select(m => new Terminal(m, Role.Lead))],
            Elements =
            [
                new Element("contact", marks.Known[0], marks.Known[1], new Ohms(Contact.Closed.Of(settings)))
                {
                    Gate = new Gate.ByControl(control.Name, closed ? [control.Rest] : control.Positions.Remove(control.Rest)),
                    Off = Contact.Open(settings),
                },
            ],
            Controls = [control],
            Problems = marks.Problems,
            WrongSettings = [new WrongSetting(Rests.Key, closed ? "open" : "closed", WrongSetting.Sense)],
        };
    }

    /// <param name="Positions">At rest first.</param>
    private sealed record Sense(string Name, ImmutableArray<string> Positions, bool ClosedAtRest, bool Momentary);
}
