using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>The inputs of a load controller.</summary>
internal static class ControllerInputs
{
    private static readonly Parameter Terminal = new("terminal", "Its mark on the case.", new Form.Text());
    private static readonly Parameter Active = new("active", "What its switch joins it to when operated: plus, or ground.", new Form.Choice(["ground", "plus"]));
    private static readonly Amount Button = new("button", "In place of terminal and active: the button of the block at data, by the maker's number.", Unit.One, 1, 32);
    private static readonly Amount Ladder = new("resistance", "Of that button in a resistor ladder. Left out: 330 Ω for the first, and 1.8 times as much from button to button.", Unit.Ohm, 1, 1e6);

    // Judgement, no source: enough to hold the lead at rest, little enough not to matter asleep.
    private static readonly Amount Pull = new("pull", "The resistance that holds it at rest: to supply when active at ground, to ground when active at plus.", Unit.Ohm, 100, 1e7, 10_000);

    // Judgement, no source: either side of a third of the supply.
    private static readonly Amount Low = new("low", "Read as joined to ground below this voltage against its own ground.", Unit.Volt, 0.1, 20, 3);
    private static readonly Amount High = new("high", "Read as joined to plus above this; in between is undefined.", Unit.Volt, 0.1, 20, 6);

    public static Parameter Parameter { get; } = new("inputs", "Its inputs by your own names.",
        new Form.Each(new Form.Keys([Terminal, Active, Button.Parameter, Ladder.Parameter, Pull.Parameter, Low.Parameter, High.Parameter])));

    public static ImmutableArray<(Input Input, Element? Pull)> Read(Settings settings, Seats seats, DataInput? data)
    {
        var inputs = ImmutableArray.CreateBuilder<(Input, Element?)>();
        foreach (var (name, value) in settings.Group("inputs").Entries)
        {
            var own = value is Value.Group group ? group.Entries : Settings.None;
            var path = $"inputs/{name}";
            if (Button.Given(own) is { } number)
            {
                if (OfBlock(settings, name, (int)number, Ladder.Given(own), data, seats, path) is { } button)
                {
                    inputs.Add((button, null));
                }

                continue;
            }

            if (own.Word(Active.Key) is null)
            {
                seats.Marks.Complain(path, $"{name} does not say what makes it active", "write active: ground or active: plus, whichever its switch joins it to");
            }

            if (seats.Take(own.Word("terminal"), Role.Input, name, path) is not { } terminal)
            {
                continue;
            }

            var (low, high) = (Low.Of(own), High.Of(own));
            if (low >= high)
            {
                seats.Marks.Complain($"{path}/low", "its low threshold is not below its high one", "write the lower voltage under low");
                (low, high) = (Math.Min(low, high), Math.Max(low, high));
            }

            var atGround = !Names.Same(own.Word(Active.Key) ?? "ground", "plus");
            inputs.Add((
                new Input(name, terminal, atGround, low, high),
                new Element($"{name} pull", terminal, atGround ? seats.Supply : seats.Ground, new Ohms(Pull.Of(own)))));
        }

        return inputs.ToImmutable();
    }

    /// <summary>Set up to wait for plus where its switch gives ground, or the other way round.</summary>
    public static WrongSetting OtherSense(Input input) => new($"inputs/{input.Name}/{Active.Key}", input.ActiveAtGround ? "plus" : "ground", WrongSetting.Set);

    private static Input? OfBlock(Settings settings, string name, int number, double? ohms, DataInput? data, Seats seats, string path)
    {
        if (data is null)
        {
            seats.Marks.Complain($"{path}/button", $"{name} is a button of a block, and nothing says where the block is heard", "write data: with its terminal and how it reads, or name terminal and active of the input");
            return null;
        }

        return new Input(name, data.Terminal, true, 0, 0)
        {
            Button = new DataButton(number, ControllerData.ReadsLadder(settings) ? ohms ?? DataInput.UsualOhms(number) : null),
        };
    }
}
