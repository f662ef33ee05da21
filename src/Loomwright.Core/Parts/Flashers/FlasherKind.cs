using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>An indicator flasher in its three behaviours (docs/models/flasher.md).</summary>
internal static class FlasherKind
{
    private const double RatedVolts = 12;

    // Electronics that live from 49 and 31: 20 mA, and dead below half the supply (judgement, no source).
    private const double OwnAmps = 0.02;

    private static readonly Pick Works = new(
        "works", "By the heat of its two-terminal strip, by two-terminal electronics that sense the load, or by three-terminal electronics with a ground of their own.",
        ["thermal", "load sensing", "three terminal"])
    { Required = true };

    private static readonly Amount Load = new("rated load", "Watts of the lamps it is made for, at 12 V.", Unit.Watt, 0.5, 500, 42);
    private static readonly Amount Rate = new("rate", "Flashes a minute at that load.", Unit.One, 10, 300, 85);
    private static readonly Amount Inside = new("contact", "Resistance from 49 to 49a while closed.", Unit.Ohm, 0.0001, 10, 0.050);
    private static readonly Parameter Marked = new("terminals", "The marks of feed, output and, with three terminals, ground, in this order. Default 49, 49a and 31.", new Form.Names());

    public static Kind Kind { get; } = new(
        "flasher", "A flasher for the indicators.", [Works.Parameter, Load.Parameter, Rate.Parameter, Inside.Parameter, Marked], Build);

    private static Model Build(Part part)
    {
        var settings = part.Settings;
        var three = Works.Of(settings) == "three terminal";
        var marks = Marks.Of(settings, Marked.Key, three ? ["49", "49a", "31"] : ["49", "49a"]);
        var (feed, output) = (marks.Known[0], marks.Known[1]);
        var law = Works.Of(settings) switch { "thermal" => FlasherLaw.Heat, "load sensing" => FlasherLaw.LoadSensing, _ => FlasherLaw.Clock };
        var contact = new Element("contact", feed, output, new Ohms(Inside.Of(settings))) { Gate = new Gate.ByFlasher("flasher") };
        var model = new Model
        {
            Terminals = [new Terminal(feed, Role.Lead), new Terminal(output, Role.Lead)],
            Elements = [contact],
            Flashers = [new Flasher("flasher", contact.Name, law, Load.Of(settings) / RatedVolts, Rate.Of(settings))],
            Problems = marks.Problems,
            WrongSettings = three ? [] : [new WrongSetting(Works.Key, law == FlasherLaw.Heat ? "load sensing" : "thermal", WrongSetting.Chosen)],
        };
        return three ? WithGround(model, contact, marks.Known) : model;
    }

    private static Model WithGround(Model model, Element contact, ImmutableArray<string> marks) => model with
    {
        Terminals = model.Terminals.Add(new Terminal(marks[2], Role.Minus)),
        Elements =
        [
            contact with { Gate = new Gate.Both(contact.Gate!, new Gate.ByRelay("electronics", WhenPulledIn: true)) },
            new Element("electronics", marks[0], marks[2], new Ohms(RatedVolts / OwnAmps)),
        ],
        Relays = [new Relay("electronics", ["electronics"], OwnAmps / 2, OwnAmps / 3) { Clicks = false }],
        Polarity = (marks[0], marks[2]),
    };
}
