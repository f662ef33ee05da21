using Loomwright.Simulation;

namespace Loomwright.Output;

/// <summary>What is seen, in words.</summary>
internal static class Says
{
    public static string Awake(bool awake) => awake ? "awake" : "asleep";

    public static string Input(bool active) => active ? "active" : "at rest";

    /// <summary>How settling ended, or null when it simply settled.</summary>
    public static string? Word(Outcome outcome) => outcome switch
    {
        Outcome.Settled => null,
        Outcome.SwitchesByItself => "switches on and off by itself",
        Outcome.Race => "depends on which of two things is faster",
        Outcome.UndefinedInput => "an input is neither on nor off; either reading ends differently",
        Outcome.Unsolved => "no answer was found for the volts and amps",
    };
}
