using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Verbs;
using Loomwright.Walk;

namespace Loomwright.Answers;

/// <summary>What <c>walk</c> answers. Computed from the file; the bike was not measured.</summary>
public sealed class WalkAnswer(OpenedDesign design, Walked walked) : Answer("walk", design, walked.Complete)
{
    [Description("How the walk ended; only when it says complete was every position walked.")]
    public WalkEnd End { get; } = walked.End;

    [Description("Everything this many operations from rest or nearer was walked.")]
    public int Depth { get; } = walked.Depth;

    [Description("Different settings of all controls reached, at most two held that spring back.")]
    public long ControlCombinations { get; } = walked.ControlCombinations;

    [Description("Different states reached.")]
    public long States { get; } = walked.States;

    [Description("Moves of a control and run-outs of a time that were tried.")]
    public long Events { get; } = walked.Events;

    [Description("Different electrical configurations; each was solved once.")]
    public long ConfigurationsSolved { get; } = walked.ConfigurationsSolved;

    [Description("One for each kind and function, the one with the fewest operations first.")]
    public ImmutableArray<SurpriseAnswer> Surprises { get; } = [.. walked.Surprises.Select(SurpriseAnswer.Of)];

    [Description("Outputs into which current flows from outside while they are off.")]
    public ImmutableArray<BackFeedAnswer> BackFeeds { get; } = [.. walked.BackFeeds.Select(BackFeedAnswer.Of)];

    [Description("The most the supply gives while no function works; null when a function works everywhere.")]
    public DrainAnswer? Drain { get; } = walked.Drain is { } drain ? new DrainAnswer(drain.Current.Amps, [.. drain.Steps.Select(s => s.Words)]) : null;
}

/// <summary>One thing not as promised.</summary>
public sealed record SurpriseAnswer(
    SurpriseKind Kind,
    [property: Description("The function it concerns, or null.")] string? Function,
    [property: Description("The fewest operations from everything at rest.")] ImmutableArray<string> Steps,
    [property: Description("Where each control then stands.")] IReadOnlyDictionary<string, string> Controls,
    [property: Description("What is then remembered.")] ImmutableArray<string> Memory,
    ImmutableArray<PartSurprise> Parts,
    [property: Description("A time has to run out on the way.")] bool DependsOnTiming,
    [property: Description("How often it came in all.")] long Times,
    [property: Description("What happened at the last step.")] ImmutableArray<string> Events)
{
    public static SurpriseAnswer Of(Surprise s) => new(
        s.Kind,
        s.Function,
        [.. s.Steps.Select(t => t.Words)],
        Keyed.By(s.Controls, c => c.Control, c => c.Position),
        s.Memory,
        s.Parts,
        s.DependsOnTiming,
        s.Times,
        s.Events);
}

/// <summary>An output fed from outside.</summary>
public sealed record BackFeedAnswer(
    string Box,
    string Terminal,
    [property: Description("The most that flows.")] double Amps,
    ImmutableArray<string> Steps,
    [property: Description("In how many states.")] long States)
{
    public static BackFeedAnswer Of(BackFeed f) => new(f.Box, f.Terminal, f.Current.Amps, [.. f.Steps.Select(s => s.Words)], f.States);
}

/// <summary>What the supply gives while nothing works.</summary>
public sealed record DrainAnswer(double Amps, ImmutableArray<string> Steps);
