using System.Collections.Immutable;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Walk;

/// <summary>What a walk through the positions of a bike found. Computed from the file; the bike was not measured.</summary>
public sealed record Walked
{
    /// <summary>Different settings of all controls that were reached, with at most two held that spring back.</summary>
    public required long ControlCombinations { get; init; }

    /// <summary>Different states reached: controls, what boxes and promises remember, running timers.</summary>
    public required long States { get; init; }

    /// <summary>Moves of a control and run-outs of a timer that were tried, one from each state.</summary>
    public required long Events { get; init; }

    /// <summary>Different electrical configurations; each was solved once.</summary>
    public required long ConfigurationsSolved { get; init; }

    public required WalkEnd End { get; init; }

    /// <summary>Everything that lies this many operations from rest or nearer was walked.</summary>
    public required int Depth { get; init; }

    /// <summary>One for each kind and function, the one with the fewest operations first.</summary>
    public required ImmutableArray<Surprise> Surprises { get; init; }

    /// <summary>Outputs into which current flows from outside while they are off, by place.</summary>
    public required ImmutableArray<BackFeed> BackFeeds { get; init; }

    /// <summary>The most the supply gives while no function works; null when a function works everywhere.</summary>
    public required Drain? Drain { get; init; }

    /// <summary>Whether nothing was left out.</summary>
    public bool Complete => End == WalkEnd.Complete;

    /// <summary>How much was walked and what that is worth, for every screen and sheet.</summary>
    public string InWords => (End switch
    {
        WalkEnd.Complete => FormattableString.Invariant($"Every position was walked: {ControlCombinations} settings of the controls, {States} states, {Events} operations tried."),
        WalkEnd.Limit => Partly("the walk grew too large"),
        WalkEnd.FirstSurprise => Partly("the walk ended at the first surprise"),
        _ => Partly("the walk was stopped"),
    }) + (Surprises.Any(s => s.Kind >= SurpriseKind.FuseBlows) ? " From where a fuse blew, an output tripped or nothing came to rest it did not go on." : "") + " Computed from the file; your bike was not measured.";

    private string Partly(string why) => FormattableString.Invariant(
        $"Not every position was walked, {why}: everything up to {Depth} {(Depth == 1 ? "operation" : "operations")} from rest, {States} states. What lies beyond was not looked at.");
}

/// <summary>How a walk ended.</summary>
public enum WalkEnd
{
    Complete,

    /// <summary>More states than allowed.</summary>
    Limit,

    /// <summary>Stopped from outside.</summary>
    Stopped,

    /// <summary>One surprise was enough.</summary>
    FirstSurprise,
}

/// <summary>What is not as promised.</summary>
public enum SurpriseKind
{
    /// <summary>A function works and what it promises is dark, silent or at rest.</summary>
    ShowsNothing,

    /// <summary>It shows, with less than 80 % of the light it gives with its function alone.</summary>
    Dimmed,

    /// <summary>Something shows and no working function promises it.</summary>
    NotAskedFor,

    /// <summary>It shows, in another way than promised.</summary>
    ShowsOtherwise,

    FuseBlows,
    OutputTrips,
    SwitchesByItself,
    Race,
    UndefinedInput,
    Unsolved,
}

/// <summary>One thing not as promised, with the fewest operations that show it.</summary>
/// <param name="Function">The function it concerns, or null.</param>
/// <param name="Steps">From everything at rest.</param>
/// <param name="Controls">How every control then stands.</param>
/// <param name="Memory">What is then remembered: <c>box: left lamps</c>.</param>
/// <param name="Parts">What it concerns there.</param>
/// <param name="DependsOnTiming">A time has to run out on the way.</param>
/// <param name="Times">In how many states it shows in all, or from how many operations it comes.</param>
/// <param name="Events">What happened at the last step, in words.</param>
public sealed record Surprise(
    SurpriseKind Kind,
    string? Function,
    ImmutableArray<WalkStep> Steps,
    ImmutableArray<ControlSeen> Controls,
    ImmutableArray<string> Memory,
    ImmutableArray<PartSurprise> Parts,
    bool DependsOnTiming,
    long Times,
    ImmutableArray<string> Events)
{
    /// <summary>What it concerns and what is wrong with it, in words.</summary>
    public string Title => $"{Function ?? string.Join(" and ", Parts.Select(p => Words.Name(p.Part)))}: {Word(Kind)}";

    private static string Word(SurpriseKind kind) => kind switch
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

/// <summary>A part, how it should be and how it is.</summary>
public sealed record PartSurprise(string Part, string Expected, string Seen);

/// <summary>One operation on the way.</summary>
/// <param name="Words">Told to a person: <c>lock → riding</c>.</param>
/// <param name="Operation">The same for a rig.</param>
/// <param name="BeforePower">Done before the supply is connected.</param>
public sealed record WalkStep(string Words, Operation Operation, bool BeforePower);

/// <summary>An output that current flows into from outside while it is off.</summary>
/// <param name="Current">The most that flows, into the terminal.</param>
/// <param name="Steps">The fewest operations that show any.</param>
/// <param name="States">In how many states.</param>
public sealed record BackFeed(string Box, string Terminal, Current Current, ImmutableArray<WalkStep> Steps, long States);

/// <summary>What the supply gives while no function works.</summary>
public sealed record Drain(Current Current, ImmutableArray<WalkStep> Steps);

/// <summary>How far a walk has come.</summary>
/// <param name="Depth">Operations from rest.</param>
/// <param name="States">Reached so far.</param>
/// <param name="Waiting">Reached and not yet gone on from.</param>
/// <param name="Surprises">So far.</param>
public readonly record struct WalkProgress(int Depth, long States, long Waiting, int Surprises);
