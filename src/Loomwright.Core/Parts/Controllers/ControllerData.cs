using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>The input of a load controller that hears a button block.</summary>
internal static class ControllerData
{
    private static readonly Parameter Terminal = new("terminal", "Its mark on the case.", new Form.Text()) { Required = true };
    private static readonly Parameter Second = new("second terminal", "The other one of a two-wire bus.", new Form.Text());
    private static readonly Pick By = new("reads", "How the block reports: over one data lead, as a resistor ladder, or over a two-wire bus.", ["data lead", "resistor ladder", "bus"]) { Required = true };

    // Judgement, no source.
    private static readonly Amount Pull = new("pull", "What holds a single data lead at supply.", Unit.Ohm, 100, 1e6, 1000);

    public static Parameter Parameter { get; } = new("data", "Where it hears a button block, and how.", new Form.Keys([Terminal, Second, By.Parameter, Pull.Parameter]));

    /// <summary>Whether it reads a resistor ladder.</summary>
    public static bool ReadsLadder(Settings settings) => By.Of(settings.Group(Parameter.Key)) == "resistor ladder";

    public static (DataInput? Data, ImmutableArray<Element> Elements) Read(Settings settings, Seats seats)
    {
        if (settings[Parameter.Key] is not Value.Group { Entries: var own } || seats.Take(own.Word(Terminal.Key), Role.Input, "data", Parameter.Key) is not { } terminal)
        {
            return (null, []);
        }

        if (By.Of(own) != "bus")
        {
            var pullOhms = Pull.Of(own);
            return (new DataInput(terminal, null, pullOhms), [new Element("data pull", terminal, seats.Supply, new Ohms(pullOhms))]);
        }

        if (seats.Take(own.Word(Second.Key), Role.Input, "data", $"{Parameter.Key}/{Second.Key}") is not { } second)
        {
            return (null, []);
        }

        return (new DataInput(terminal, second, Pull.Of(own)), [new Element("data end resistor", terminal, second, new Ohms(DataInput.BusEndOhms))]);
    }
}
