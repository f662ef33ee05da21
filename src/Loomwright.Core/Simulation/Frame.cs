using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Simulation;

/// <summary>How settling ended (docs/conventions.md).</summary>
public enum Outcome
{
    Settled,
    SwitchesByItself,
    Race,
    UndefinedInput,
    Unsolved,
}

/// <summary>What a person sees or hears of a part.</summary>
public enum Symbol
{
    Dark,
    Dim,
    Lit,
    Flashing,
    Silent,
    Sounds,

    /// <summary>Flashing more than 120 times a minute.</summary>
    FlashingFast,

    /// <summary>Flashing less than 60 times a minute.</summary>
    FlashingSlowly,

    /// <summary>A motor that turns …</summary>
    Turns,

    /// <summary>A load that does what it is for: sparks, warms, feeds what is plugged in …</summary>
    Works,

    /// <summary>… and either of them when it does not.</summary>
    Rests,
}

/// <summary>The bike at one moment, settled after one operation.</summary>
public sealed record Frame
{
    /// <summary>Since power was connected.</summary>
    public required TimeSpan Time { get; init; }

    /// <summary>The operation that led here, in words: <c>lock → riding</c>.</summary>
    public required string Step { get; init; }

    public required Outcome Outcome { get; init; }

    /// <summary>Every control and where it stands, in file order.</summary>
    public required ImmutableArray<ControlSeen> Controls { get; init; }

    public required ImmutableArray<ControllerSeen> Controllers { get; init; }

    /// <summary>Every relay, in file order.</summary>
    public ImmutableArray<RelaySeen> Relays { get; init; } = [];

    /// <summary>Whatever a person can tell, in file order: lamps, horns, motors, loads.</summary>
    public required ImmutableArray<Seen> Seen { get; init; }

    /// <summary>Every fuse, in file order.</summary>
    public required ImmutableArray<FuseSeen> Fuses { get; init; }

    /// <summary>One electrical picture, or two when something blinks: first with the blinking outputs on, then off.</summary>
    public required ImmutableArray<Phase> Phases { get; init; }

    /// <summary>What happened on the way, in words: a fuse blew, the box reset. In order.</summary>
    public required ImmutableArray<string> Events { get; init; }
}

/// <summary>A control and its position.</summary>
public sealed record ControlSeen(string Control, string Position, bool AtRest);

/// <summary>A load controller as it now is.</summary>
/// <param name="Part">Its name.</param>
/// <param name="Awake">Whether it is awake.</param>
/// <param name="Remembers">What it latched: names of outputs.</param>
/// <param name="Inputs">Inputs and whether each is read as active.</param>
/// <param name="Outputs">Outputs as commanded.</param>
/// <param name="Lights">Its status lights.</param>
public sealed record ControllerSeen(
    string Part,
    bool Awake,
    ImmutableArray<string> Remembers,
    ImmutableArray<InputSeen> Inputs,
    ImmutableArray<OutputSeen> Outputs,
    ImmutableArray<StatusSeen> Lights);

/// <summary>An input as read.</summary>
public sealed record InputSeen(string Name, string Terminal, bool Active);

/// <summary>An output as commanded and carried.</summary>
/// <param name="State">off, on, blinking or tripped.</param>
public sealed record OutputSeen(string Name, string Terminal, OutputState State, Current Current)
{
    /// <summary>It is on and takes a lamp to be out.</summary>
    public bool LampOut { get; init; }
}

/// <summary>What an output does.</summary>
public enum OutputState
{
    Off,
    On,
    Blinking,
    Tripped,
}

/// <summary>A status light: off, on or flashing.</summary>
public sealed record StatusSeen(string Terminal, Symbol Symbol);

/// <summary>A relay as it stands; nobody sees it, but one hears it click.</summary>
public sealed record RelaySeen(string Part, bool PulledIn);

/// <summary>A lamp, horn, motor or load as a person tells it.</summary>
/// <param name="Name"><c>part</c> or <c>part.element</c>.</param>
/// <param name="Symbol">What a person would say.</param>
/// <param name="LightShare">Relative light 0…, against the same lamp alone in the healthy bike; null for all but lamps. In the on-phase.</param>
/// <param name="Voltage">Across it in the on-phase.</param>
/// <param name="Current">Through it in the on-phase.</param>
public sealed record Seen(string Name, string Part, Symbol Symbol, double? LightShare, Voltage Voltage, Current Current)
{
    /// <summary>How often it goes on and off in a minute; null when it does not.</summary>
    public double? FlashesPerMinute { get; init; }
}

/// <summary>A fuse's state.</summary>
public enum FuseState
{
    Whole,

    /// <summary>Between 100 % and 135 % of its rating: it may open after minutes or never.</summary>
    Overloaded,
    Blown,

    /// <summary>A breaker that opens, closes by itself and opens again.</summary>
    Cycling,
}

/// <summary>A fuse as it now is.</summary>
public sealed record FuseSeen(string Part, FuseState State, Current Current, Current Rating);

/// <summary>One electrical picture.</summary>
/// <param name="Potentials">Volts at every terminal against the reference; <c>Floats</c> where nothing holds the point.</param>
/// <param name="Wires">Current and drop of every wire, positive from its first end.</param>
/// <param name="Supply">Delivered by the supply.</param>
/// <param name="ResidualAmps">Largest current-sum error at any point.</param>
public sealed record Phase(
    ImmutableArray<PotentialSeen> Potentials,
    ImmutableArray<WireSeen> Wires,
    Current Supply,
    double ResidualAmps);

/// <summary>Volts at a terminal.</summary>
public sealed record PotentialSeen(TerminalRef Terminal, Voltage Potential, bool Floats);

/// <summary>A wire as it now is.</summary>
public sealed record WireSeen(string Wire, Current Current, Voltage Drop);
