using Loomwright.Simulation;
using Loomwright.Walk;

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

    /// <summary>What is not as promised.</summary>
    public static string Word(SurpriseKind kind) => kind switch
    {
        SurpriseKind.ShowsNothing => "works and shows nothing",
        SurpriseKind.Dimmed => "works and is dim",
        SurpriseKind.NotAskedFor => "shows without being asked",
        SurpriseKind.ShowsOtherwise => "works and shows otherwise than promised",
        SurpriseKind.FuseBlows => "blows",
        SurpriseKind.OutputTrips => "trips",
        SurpriseKind.SwitchesByItself => "switches on and off by itself",
        SurpriseKind.Race => "depends on which of two things is faster",
        SurpriseKind.UndefinedInput => "an input is neither on nor off",
        SurpriseKind.Unsolved => "no answer was found for the volts and amps",
    };
}
