using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Simulation;
using Loomwright.Verbs;

namespace Loomwright.Answers;

/// <summary>What <c>try</c> answers: one frame after power is connected and one after each operation.</summary>
public sealed class TryAnswer(OpenedDesign design, string? fault, ImmutableArray<Frame> frames, Func<Frame, ImmutableArray<string>> harm) : Answer("try", design)
{
    [Description("Id of the mistake put in, or null.")]
    public string? Fault { get; } = fault;

    public ImmutableArray<FrameAnswer> Frames { get; } = [.. frames.Select(f => FrameAnswer.Of(f, harm(f)))];
}

/// <summary>The bike settled after one operation.</summary>
public sealed record FrameAnswer(
    [property: Description("Since power was connected.")] double TimeS,
    [property: Description("The operation that led here.")] string Step,
    Outcome Outcome,
    [property: Description("True when nothing changes any more.")] bool Settled,
    IReadOnlyDictionary<string, ControlAnswer> Controls,
    IReadOnlyDictionary<string, ControllerAnswer> Controllers,
    [property: Description("Every relay: whether its coil holds it.")] IReadOnlyDictionary<string, RelayAnswer> Relays,
    [property: Description("Every lamp and horn.")] IReadOnlyDictionary<string, SeenAnswer> Seen,
    IReadOnlyDictionary<string, ProtectorAnswer> Protectors,
    [property: Description("What would burn or break, the worst first.")] ImmutableArray<string> Harm,
    [property: Description("What happened on the way, in order.")] ImmutableArray<string> Events,
    [property: Description("One picture, or two when something blinks: first with the blinking outputs on, then off.")] ImmutableArray<PhaseAnswer> Phases)
{
    public static FrameAnswer Of(Frame frame, ImmutableArray<string> harm) => new(
        frame.Time.TotalSeconds,
        frame.Step,
        frame.Outcome,
        frame.Outcome == Outcome.Settled,
        Keyed.By(frame.Controls, c => c.Control, c => new ControlAnswer(c.Position, c.AtRest)),
        Keyed.By(frame.Controllers, c => c.Part, ControllerAnswer.Of),
        Keyed.By(frame.Relays, r => r.Part, r => new RelayAnswer(r.PulledIn)),
        Keyed.By(frame.Seen, s => s.Name, s => new SeenAnswer(s.Part, s.Symbol, s.LightShare, s.FlashesPerMinute, s.Voltage.Volts, s.Current.Amps)),
        Keyed.By(frame.Fuses, f => f.Part, f => new ProtectorAnswer(f.State, f.Current.Amps, f.Rating.Amps)),
        harm,
        frame.Events,
        [.. frame.Phases.Select(PhaseAnswer.Of)]);
}

/// <summary>Where a control stands.</summary>
public sealed record ControlAnswer(string Position, bool AtRest);

/// <summary>A relay; nobody sees it, but one hears it click.</summary>
public sealed record RelayAnswer(bool PulledIn);

/// <summary>What is seen of a lamp or heard of a horn; numbers are in the on-phase.</summary>
public sealed record SeenAnswer(
    string Part,
    Symbol Symbol,
    [property: Description("Relative light; null for what gives none.")] double? Light,
    [property: Description("How often it goes on and off; null for what does not flash.")] double? FlashesPerMinute,
    [property: Description("Across it.")] double Volts,
    [property: Description("Through it.")] double Amps);

/// <summary>A fuse.</summary>
public sealed record ProtectorAnswer(FuseState State, double Amps, double RatingAmps);

/// <summary>One electrical picture.</summary>
public sealed record PhaseAnswer(
    [property: Description("Delivered by the supply.")] double SupplyAmps,
    [property: Description("Largest current-sum error at any point.")] double ResidualAmps,
    [property: Description("Volts at every terminal against the reference.")] IReadOnlyDictionary<string, double> Potentials,
    [property: Description("Terminals nothing holds; their volts mean nothing.")] ImmutableArray<string> Floating,
    ImmutableArray<WireAnswer> Wires)
{
    public static PhaseAnswer Of(Phase phase) => new(
        phase.Supply.Amps,
        phase.ResidualAmps,
        Keyed.By(phase.Potentials, p => p.Terminal.ToString(), p => p.Potential.Volts),
        [.. phase.Potentials.Where(p => p.Floats).Select(p => p.Terminal.ToString())],
        [.. phase.Wires.Select(w => new WireAnswer(w.Wire, w.Current.Amps, w.Drop.Volts))]);
}

/// <summary>A wire by its name: current and drop, positive from its first end.</summary>
public sealed record WireAnswer(string Wire, double Amps, double DropVolts);
