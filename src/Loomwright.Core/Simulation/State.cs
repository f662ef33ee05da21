using Loomwright.Expressions;

namespace Loomwright.Simulation;

/// <summary>
/// Everything that decides what the bike does next, and nothing else: two equal states behave alike. Time is kept apart;
/// what still runs is in the boxes' memories. Places follow the order of the <see cref="Wiring"/>.
/// </summary>
/// <param name="Positions">Each control's position, by its place in <c>Control.Positions</c>.</param>
/// <param name="Boxes">Each load controller.</param>
/// <param name="Blown">Each fuse: opened for good.</param>
/// <param name="Warm">Each of <see cref="Wiring.Colds"/>: it already carries current and is through its inrush.</param>
/// <param name="Relays">Each relay: pulled in. Between the flashes of what blinks a relay may stand otherwise.</param>
/// <param name="Flashers">Each flasher: it has enough load to go on and off; its contact stays closed while not.</param>
internal sealed record State(Row<int> Positions, Row<BoxState> Boxes, Row<bool> Blown, Row<bool> Warm, Row<bool> Relays, Row<bool> Flashers);

/// <summary>What a load controller holds at one moment.</summary>
/// <param name="Alive">It has enough supply to run.</param>
/// <param name="Awake">It is awake; never while not alive.</param>
/// <param name="Memory">What its rules remember.</param>
/// <param name="Inputs">Each input as it is read; all false while not alive.</param>
/// <param name="Commands">What its rules ask of each output; off while asleep.</param>
/// <param name="Tripped">Each output that has switched itself off.</param>
internal sealed record BoxState(bool Alive, bool Awake, Memory Memory, Row<bool> Inputs, Row<Level> Commands, Row<bool> Tripped)
{
    /// <summary>Without supply, or just given it: nothing read, nothing remembered, nothing on.</summary>
    public static BoxState Lifeless(int inputs, int outputs) =>
        new(false, false, Memory.Fresh, Row.Of(inputs, false), Row.Of(outputs, default(Level)), Row.Of(outputs, false));

    /// <summary>What an output truly does: its command, or off when it has tripped.</summary>
    public Level Drive(int output) => Tripped[output] ? default : Commands[output];
}
