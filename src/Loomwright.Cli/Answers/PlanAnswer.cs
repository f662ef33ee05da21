using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Bench;
using Loomwright.Proof;
using Loomwright.Quantities;
using Loomwright.Verbs;

namespace Loomwright.Answers;

/// <summary>What <c>plan</c> answers; every expectation is computed.</summary>
public sealed class PlanAnswer(OpenedDesign design, Proven proven) : Answer("plan", design)
{
    public string Title { get; } = proven.Plan.Title;

    [Description("What check calls a stop: put right before any power.")]
    public ImmutableArray<FindingAnswer> PutRightFirst { get; } = [.. proven.Plan.PutRightFirst.Select(f => FindingAnswer.Of(f, design))];

    public ImmutableArray<StageAnswer> Stages { get; } = [.. proven.Plan.Stages.Select(StageAnswer.Of)];

    [Description("What this plan leaves unshown, and why.")]
    public ImmutableArray<string> OpenPoints { get; } = proven.Plan.OpenPoints;

    [Description("Every single fault that does harm in some state of the plan: caught, limited or open.")]
    public HarmAnswer Harm { get; } = HarmAnswer.Of(proven.Harm);

    [Description("What the plan sees of every single fault.")]
    public CoverageAnswer Coverage { get; } = CoverageAnswer.Of(proven);
}

/// <summary>One stage.</summary>
public sealed record StageAnswer(
    [property: Description("From 0.")] int Number,
    string Title,
    string Why,
    [property: Description("Largest supply current over everything the stage operates.")] double DrawsAmps,
    FirstFuseAnswer FirstFuse,
    [property: Description("How long it takes someone who does it the first time; judgement.")] int Minutes,
    ImmutableArray<string> Tools,
    ImmutableArray<StepAnswer> Steps)
{
    public static StageAnswer Of(Stage stage) => new(
        stage.Number,
        stage.Title,
        stage.Why,
        stage.Draws.Amps,
        new FirstFuseAnswer(stage.FirstFuse.Rating.Amps, stage.FirstFuse.BodyColour, stage.FirstFuse.Final?.Amps),
        Effort.Minutes(stage),
        Effort.Tools(stage),
        [.. stage.Steps.Select(StepAnswer.Of)]);
}

/// <summary>The fuse for first power.</summary>
public sealed record FirstFuseAnswer(
    double RatingAmps,
    string BodyColour,
    [property: Description("Rating of the fuse that stays, or null.")] double? FinalAmps);

/// <summary>One act of one hand.</summary>
public sealed record StepAnswer(
    [property: Description("Stable: s1.connect.2.")] string Id,
    Act Act,
    string Text,
    ImmutableArray<MarkAnswer> Marks,
    [property: Description("The part it fetches, or null.")] string? Part,
    [property: Description("The wire it handles, by name, or null.")] string? Wire,
    MeterAnswer? Meter,
    ImmutableArray<ExpectationAnswer> Expect,
    ImmutableArray<string> Cautions,
    [property: Description("Lamps and the like whose plug is off while it is measured.")] ImmutableArray<string> Unplugged,
    bool PowerOn,
    [property: Description("The control that is moved, or null.")] MoveAnswer? Do,
    [property: Description("How long to wait for what ends by itself, or null.")] double? WaitS)
{
    public static StepAnswer Of(Step step) => new(
        step.Id,
        step.Act,
        step.Text,
        [.. step.Marks.Select(MarkAnswer.Of)],
        step.Part,
        step.Wire,
        step.Meter is { } meter ? MeterAnswer.Of(meter) : null,
        [.. step.Expect.Select(ExpectationAnswer.Of)],
        step.Cautions,
        step.Unplugged,
        step.PowerOn,
        step.Do is { } move ? new MoveAnswer(move.Control, move.Position) : null,
        step.Wait?.TotalSeconds);
}

/// <summary>A control and where it is moved to.</summary>
public sealed record MoveAnswer(string Control, string Position);

/// <summary>A terminal, and the owner's name for what goes there.</summary>
public sealed record MarkAnswer(string Terminal, string? Name)
{
    public static MarkAnswer Of(Mark mark) => new(mark.Terminal.ToString(), mark.Name);
}

/// <summary>How to measure.</summary>
public sealed record MeterAnswer(
    Dial Dial,
    string RedSocket,
    string BlackSocket,
    MarkAnswer RedTip,
    MarkAnswer BlackTip,
    [property: Description("What to do before a reading is believed.")] string First,
    bool PowerOn)
{
    public static MeterAnswer Of(MeterCard card) => new(
        card.Dial, card.RedSocket, card.BlackSocket, MarkAnswer.Of(card.RedTip), MarkAnswer.Of(card.BlackTip), card.First, card.PowerOn);
}

/// <summary>Something to see or read.</summary>
public sealed record ExpectationAnswer(
    string What,
    string Shows,
    [property: Description("The numbers behind it; null when it is seen, not read.")] BandAnswer? Band)
{
    public static ExpectationAnswer Of(Expectation e) => new(
        e.What, e.Shows, e.Band is { } b ? new BandAnswer(b.Least, b.Computed, b.Most, b.Unit) : null);
}

/// <summary>The span a reading should fall in.</summary>
public sealed record BandAnswer(double? Least, double? Computed, double? Most, Unit Unit);
