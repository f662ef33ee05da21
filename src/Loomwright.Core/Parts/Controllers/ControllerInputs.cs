using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>The inputs of a load controller.</summary>
internal static class ControllerInputs
{
    private static readonly Parameter Terminal = new("terminal", "Its mark on the case.", new Form.Text()) { Required = true };
    private static readonly Pick Active = new("active", "What its switch joins it to when operated: plus, or ground.", ["ground", "plus"]) { Required = true };

    // Judgement, no source: enough to hold the lead at rest, little enough not to matter asleep.
    private static readonly Amount Pull = new("pull", "The resistance that holds it at rest: to supply when active at ground, to ground when active at plus.", Unit.Ohm, 100, 1e7, 10_000);

    // Judgement, no source: either side of a third of the supply.
    private static readonly Amount Low = new("low", "Read as joined to ground below this voltage against its own ground.", Unit.Volt, 0.1, 20, 3);
    private static readonly Amount High = new("high", "Read as joined to plus above this; in between is undefined.", Unit.Volt, 0.1, 20, 6);

    public static Parameter Parameter { get; } = new("inputs", "Its inputs by your own names.",
        new Form.Each(new Form.Keys([Terminal, Active.Parameter, Pull.Parameter, Low.Parameter, High.Parameter])));

    public static ImmutableArray<(Input Input, Element Pull)> Read(Settings settings, Seats seats)
    {
        var inputs = ImmutableArray.CreateBuilder<(Input, Element)>();
        foreach (var (name, value) in settings.Group("inputs").Entries)
        {
            var own = value is Value.Group group ? group.Entries : Settings.None;
            var path = $"inputs/{name}";
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

            var atGround = Active.Of(own) == "ground";
            inputs.Add((
                new Input(name, terminal, atGround, low, high),
                new Element($"{name} pull", terminal, atGround ? seats.Supply : seats.Ground, new Ohms(Pull.Of(own)))));
        }

        return inputs.ToImmutable();
    }
}
