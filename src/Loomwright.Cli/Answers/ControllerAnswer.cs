using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Simulation;

namespace Loomwright.Answers;

/// <summary>A load controller as it now is.</summary>
public sealed record ControllerAnswer(
    bool Awake,
    [property: Description("Names of the outputs it has latched.")] ImmutableArray<string> Memory,
    IReadOnlyDictionary<string, InputAnswer> Inputs,
    IReadOnlyDictionary<string, OutputAnswer> Outputs,
    [property: Description("Its small lights, by the terminal they stand beside.")] IReadOnlyDictionary<string, Symbol> Lights)
{
    public static ControllerAnswer Of(ControllerSeen seen) => new(
        seen.Awake,
        seen.Remembers,
        Keyed.By(seen.Inputs, i => i.Name, i => new InputAnswer(i.Terminal, i.Active)),
        Keyed.By(seen.Outputs, o => o.Name, o => new OutputAnswer(o.Terminal, o.State, o.Current.Amps, o.LampOut)),
        Keyed.By(seen.Lights, l => l.Terminal, l => l.Symbol));
}

/// <summary>An input as read.</summary>
public sealed record InputAnswer(string Terminal, bool Active);

/// <summary>An output as commanded and carried.</summary>
public sealed record OutputAnswer(
    string Terminal,
    OutputState State,
    double Amps,
    [property: Description("It is on and takes a lamp to be out; false where it does not look for that.")] bool LampOut);
