using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Proof;

namespace Loomwright.Answers;

/// <summary>Every harmful single fault: <c>total</c> = caught + limited + open.</summary>
public sealed record HarmAnswer(int Total, int Caught, int Limited, int Open, ImmutableArray<HarmKindAnswer> Kinds, ImmutableArray<HarmfulAnswer> Faults)
{
    public static HarmAnswer Of(HarmList harm) => new(
        harm.Faults.Length,
        harm.Count(Fate.Caught),
        harm.Count(Fate.Limited),
        harm.Count(Fate.Open),
        [.. harm.Possible.Select(k => new HarmKindAnswer(k, harm.Count(k), harm.Count(k, Fate.Caught), harm.Count(k, Fate.Limited), harm.Count(k, Fate.Open)))],
        [.. harm.Faults.Select(HarmfulAnswer.Of)]);
}

/// <summary>How many faults do one kind of harm; a fault that does several is counted in each.</summary>
public sealed record HarmKindAnswer(HarmKind Kind, int Total, int Caught, int Limited, int Open);

/// <summary>A harmful single fault.</summary>
public sealed record HarmfulAnswer(
    [property: Description("Its id, as list faults gives it.")] string Fault,
    ImmutableArray<HarmKind> Kinds,
    [property: Description("The first stage in which it harms at full power.")] int Stage,
    [property: Description("The step there with which it begins.")] string Step,
    Fate Standing,
    [property: Description("The step that tells it before; null when it is open.")] string? By,
    [property: Description("Of a measurement: how many times the reading misses its band, the meter's tolerance taken off.")] double? Margin,
    [property: Description("What to mind at that step while it is open; else empty.")] string Precaution)
{
    public static HarmfulAnswer Of(HarmfulFault f) => new(
        f.Fault.ToString(), f.Kinds, f.Stage, f.Step, f.Fate, f.By, f.Margin is { } margin && double.IsFinite(margin) ? margin : null, f.Precaution);
}

/// <summary>What the plan sees. Each fault is in one class: two + one + no_effect_now + not_reached + needs_a_meter = total.</summary>
public sealed record CoverageAnswer(
    int Total,
    int Two,
    int One,
    int NoEffectNow,
    int NotReached,
    int NeedsAMeter,
    [property: Description("Share the plan sees, 0 to 1.")] double SeenShare,
    [property: Description("Share that operating everything and looking would see, 0 to 1.")] double LookingShare,
    ImmutableArray<FaultSeenAnswer> Faults,
    [property: Description("By stage: what nothing sees when it is left out, its once more in the next stage too.")] ImmutableArray<OnlyAnswer> OnlyByStage)
{
    public static CoverageAnswer Of(Proven proven) => new(
        proven.Coverage.Faults.Length,
        proven.Coverage.Count(SeenBy.Two),
        proven.Coverage.Count(SeenBy.One),
        proven.Coverage.Count(SeenBy.NoEffectNow),
        proven.Coverage.Count(SeenBy.NotReached),
        proven.Coverage.Count(SeenBy.NeedsAMeter),
        proven.Coverage.Seen,
        proven.Coverage.SeenByLooking,
        [.. proven.Coverage.Faults.Select(f => new FaultSeenAnswer(f.Fault.ToString(), f.SeenBy, f.By, f.Missing))],
        [.. proven.Plan.Stages.Select(s => new OnlyAnswer(s.Number, [.. proven.Coverage.LostWithout(s.Number).Select(f => f.ToString())]))]);
}

/// <summary>A fault and up to two steps that see it by different means.</summary>
public sealed record FaultSeenAnswer(
    string Fault,
    SeenBy SeenBy,
    ImmutableArray<string> By,
    [property: Description("What no stage connects, for one that is not reached.")] string? Missing);

/// <summary>What only one stage sees.</summary>
public sealed record OnlyAnswer(int Stage, ImmutableArray<string> Faults);
