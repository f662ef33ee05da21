using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>The outputs of a load controller: each a switch to its supply with what a real one has beside it.</summary>
internal static class ControllerOutputs
{
    private const double LeakageAtVolts = 12;

    private static readonly Parameter Terminal = new("terminal", "Its mark on the case.", new Form.Text()) { Required = true };
    private static readonly Parameter When = new("when", "When it is on, over the box's own inputs.", new Form.Condition()) { Required = true };
    private static readonly Amount Limit = new("limit", "Where it trips. Default never.", Unit.Amp, 0.05, 500);
    private static readonly Amount TripsAfter = new("trips after", "How long it stands more than its limit.", Unit.Second, 0, 60, 0.2);
    private static readonly Parameter TripEnds = new("trip ends", "What ends a trip: an input going off, as in key off. Default its own command going off.", new Form.Text());

    // Judgement, no source, by the size of today's solid-state switches.
    private static readonly Amount On = new("on resistance", "Of its switch when on.", Unit.Ohm, 0.0001, 10, 0.010);
    private static readonly Amount Leakage = new("leakage", "What it lets through when off, at 12 V into a lamp.", Unit.Amp, 1e-9, 0.1, 20e-6);
    private static readonly Amount PullDown = new("pull down", "The resistance that holds it at ground when off and nothing is connected.", Unit.Ohm, 100, 1e9, 47_000);
    private static readonly Pick BodyDiode = new("body diode", "Whether current fed in at the output reaches its supply.", ["fitted", "none"]);

    private static readonly Amount LampOut = new("lamp out below", "On with less current than this it takes a lamp to be out. Left out: it does not look.", Unit.Amp, 0.001, 100);
    private static readonly Pick OnLampOut = new("on lamp out", "What it does then: only tells it by a light that means trouble, or blinks twice as fast.", ["tells", "blinks fast"]);

    public static Parameter Parameter { get; } = new("outputs", "Its outputs by your own names.", new Form.Each(new Form.Keys(
    [
        Terminal, When, Limit.Parameter, TripsAfter.Parameter, TripEnds, On.Parameter, Leakage.Parameter, PullDown.Parameter, BodyDiode.Parameter, LampOut.Parameter, OnLampOut.Parameter,
    ])));

    public static ImmutableArray<(Output Output, ImmutableArray<Element> Elements)> Read(Settings settings, Seats seats, ImmutableArray<string> inputs)
    {
        var outputs = ImmutableArray.CreateBuilder<(Output, ImmutableArray<Element>)>();
        foreach (var (name, value) in settings.Group("outputs").Entries)
        {
            var own = value is Value.Group group ? group.Entries : Settings.None;
            var path = $"outputs/{name}";
            var terminal = seats.Take(own.Word("terminal"), Role.Output, name, path);
            var when = own.Word("when") is { } text ? LoadControllerKind.Condition(text, inputs, $"{path}/when", seats.Marks) : null;
            if (own.Word("when") is null)
            {
                seats.Marks.Complain(path, $"{name} does not say when it is on", "write when: and an input, or always");
            }

            if (terminal is null || when is null)
            {
                continue;
            }

            var element = $"{name} switch";
            outputs.Add((
                new Output(name, terminal, when, element, Limit.Given(own), TimeSpan.FromSeconds(TripsAfter.Of(own)), TripEnd(own, inputs, path, seats.Marks))
                {
                    LampOutBelowAmps = LampOut.Given(own),
                    HurriesOnLampOut = OnLampOut.Of(own) == "blinks fast",
                },
                Elements(own, name, element, terminal, seats)));
        }

        return outputs.ToImmutable();
    }

    /// <summary>A limit that little but a tell-tale keeps below …</summary>
    public const double TooLowAmps = 1;

    /// <summary>… and an output set to it.</summary>
    public static WrongSetting TooLow(Output output) => new($"outputs/{output.Name}/{Limit.Key}", "1 A", WrongSetting.Set);

    private static ImmutableArray<Element> Elements(Settings own, string name, string element, string terminal, Seats seats)
    {
        ImmutableArray<Element> always =
        [
            new Element(element, seats.Supply, terminal, new Ohms(On.Of(own))) { Gate = new Gate.ByOutput(name) },
            new Element($"{name} leakage", seats.Supply, terminal, new Ohms(LeakageAtVolts / Leakage.Of(own))),
            new Element($"{name} pull down", terminal, seats.Ground, new Ohms(PullDown.Of(own))),
        ];
        return BodyDiode.Of(own) == "none" ? always : always.Add(new Element($"{name} body diode", terminal, seats.Supply, Diode.Silicon));
    }

    private static string? TripEnd(Settings own, ImmutableArray<string> inputs, string path, Marks marks)
    {
        if (own.Word("trip ends") is not { } written)
        {
            return null;
        }

        foreach (var input in inputs)
        {
            if (Names.Same($"{input} off", written) || Names.Same(input, written))
            {
                return input;
            }
        }

        marks.Complain($"{path}/trip ends", $"{written} is not one of its inputs going off",
            Marks.Cure(written, [.. inputs.Select(i => $"{i} off")], "leave it out: then its own command going off ends the trip"));
        return null;
    }
}
