using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>A load controller as its owner reads it out of its manual (docs/models/load-controller.md).</summary>
internal static class LoadControllerKind
{
    private static readonly Parameter Plugs = new("plugs", "Its plugs and the marks in each, in the order they stand on the case.", new Form.Each(new Form.Names())) { Required = true };
    private static readonly Parameter Supply = new("supply", "The terminal it is fed at; where it has several, all of them, and they are one inside.", new Form.Names()) { Required = true };
    private static readonly Parameter Ground = new("ground", "The terminal of its own ground; several are one inside.", new Form.Names()) { Required = true };
    private static readonly Parameter Awake = new("awake", "When it is awake, over its inputs. Default always.", new Form.Condition());
    private static readonly Amount ResetsBelow = new("resets below", "Supply below this and it starts anew, its memory lost.", Unit.Volt, 1, 20, 7.5);
    private static readonly Amount TotalLimit = new("total limit", "Most that all its outputs together may carry. Default none.", Unit.Amp, 0.1, 1000);
    private static readonly Amount TotalTripsAfter = new("total trips after", "How long it stands more than that.", Unit.Second, 0, 60, 0.2);
    private static readonly Parameter PowerUpShow = new("power-up show", "What its lights do when power is connected. It is told, and nothing is checked by it.", new Form.Text());
    private static readonly Amount BlinkRate = new("blink rate", "Flashes a minute of a blinking output.", Unit.One, 10, 600, 85);

    public static Kind Kind { get; } = new(
        "load controller",
        "An electronic box: switch inputs in, protected outputs out, told by its own rules.",
        [
            Plugs, Supply, Ground, Awake, ResetsBelow.Parameter, TotalLimit.Parameter, TotalTripsAfter.Parameter, BlinkRate.Parameter,
            ControllerSupply.Standby.Parameter, ControllerSupply.AwakeDraw.Parameter,
            PowerUpShow, ControllerData.Parameter, ControllerInputs.Parameter, ControllerOutputs.Parameter, ControllerLights.Parameter,
        ],
        Build);

    private static Model Build(Part part)
    {
        var settings = part.Settings;
        var plugs = settings.Group("plugs").Entries;
        var marks = new Marks([.. plugs.SelectMany(p => settings.Group("plugs").Words(p.Key))], "plugs");
        var supplies = Own(settings, "supply", marks);
        var grounds = Own(settings, "ground", marks);
        if (supplies is not [var supply, ..] || grounds is not [var ground, ..])
        {
            return new Model { Terminals = [.. marks.Known.Select(m => new Terminal(m, Role.Lead, null, PlugOf(m, settings)))], Problems = marks.Problems };
        }

        var seats = new Seats(marks, supply, ground);
        ImmutableArray<Element> bars = [.. Bars(supplies, Role.Plus, seats), .. Bars(grounds, Role.Minus, seats)];
        var (data, ofData) = ControllerData.Read(settings, seats);
        var inputs = ControllerInputs.Read(settings, seats, data);
        ImmutableArray<string> inputNames = [.. inputs.Select(i => i.Input.Name)];
        var outputs = ControllerOutputs.Read(settings, seats, inputNames);
        var controller = new Controller
        {
            Supply = supply,
            Ground = ground,
            Data = data,
            PowerUpShow = settings.Word(PowerUpShow.Key),
            Awake = settings.Word("awake") is { } awake ? Condition(awake, inputNames, "awake", marks) ?? new Expression.Always() : new Expression.Always(),
            ResetsBelowVolts = ResetsBelow.Of(settings),
            TotalLimitAmps = TotalLimit.Given(settings),
            TotalTripsAfter = TimeSpan.FromSeconds(TotalTripsAfter.Of(settings)),
            BlinksPerMinute = BlinkRate.Of(settings),
            Inputs = [.. inputs.Select(i => i.Input)],
            Outputs = [.. outputs.Select(o => o.Output)],
            Lights = ControllerLights.Read(settings, seats),
        };
        return new Model
        {
            Terminals = [.. marks.Known.Select(m => new Terminal(m, seats.RoleOf(m), seats.NameAt(m), PlugOf(m, settings)))],
            Elements = [.. ControllerSupply.Elements(settings, supply, ground), .. bars, .. ofData, .. inputs.Where(i => i.Pull is not null).Select(i => i.Pull!), .. outputs.SelectMany(o => o.Elements)],
            Controller = controller,
            Polarity = bars.IsEmpty ? (supply, ground) : null,
            Problems = marks.Problems,
            WrongSettings =
            [
                .. inputs.Where(i => i.Pull is not null).Select(i => ControllerInputs.OtherSense(i.Input)),
                .. outputs.Where(o => o.Output.LimitAmps > ControllerOutputs.TooLowAmps).Select(o => ControllerOutputs.TooLow(o.Output)),
            ],
        };
    }

    /// <summary>Reads a condition over the box's own inputs; null and a problem when it makes no sense.</summary>
    internal static Expression? Condition(string text, ImmutableArray<string> inputs, string path, Marks marks)
    {
        var reading = ExpressionText.Read(text, inputs, _ => []);
        if (reading is { Problem: { } problem, Cure: { } cure })
        {
            marks.Complain(path, problem, cure);
        }

        return reading.Expression;
    }

    private static ImmutableArray<string> Own(Settings settings, string key, Marks marks)
    {
        var named = settings.Word(key) is { } mark ? [mark] : settings.Words(key);
        if (named.IsEmpty)
        {
            marks.Complain(key, $"the terminal of its {key} is not named", $"write {key}: and the mark on the case");
        }

        return [.. named.Select(m => marks.Find(m, key)).OfType<string>().Distinct(Names.Comparer)];
    }

    // Several terminals for one current are a bar inside (1 mΩ: judgement, no source).
    private static IEnumerable<Element> Bars(ImmutableArray<string> terminals, Role role, Seats seats) =>
        from other in terminals.Skip(1)
        where seats.TakeBar(other, role)
        select new Element($"{other} bar", other, terminals[0], new Ohms(0.001));

    private static string? PlugOf(string mark, Settings settings) =>
        settings.Group("plugs").Entries.FirstOrDefault(p => p.Value is Value.Words words && words.Names.Contains(mark, Names.Comparer)).Key;
}
