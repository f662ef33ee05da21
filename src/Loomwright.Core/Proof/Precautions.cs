using Loomwright.Bench;

namespace Loomwright.Proof;

/// <summary>What is left to do about a harm that no check finds before power.</summary>
internal static class Precautions
{
    /// <summary>The stage with each of them at the step it belongs to, once.</summary>
    public static Stage In(Stage stage, HarmList harm) => stage with
    {
        Steps = [.. stage.Steps.Select(step => step with { Cautions = [.. step.Cautions.Concat(harm.Faults.Where(f => f.Fate == Fate.Open && f.Step == step.Id).Select(f => f.Precaution)).Distinct()] })],
    };

    /// <summary>Those of every kind of harm: first what is met where it begins, then the rest.</summary>
    public static string For(IEnumerable<HarmKind> first, IEnumerable<HarmKind> all) => string.Join(' ', first.Union(all).Select(For));

    public static string For(HarmKind kind) => kind switch
    {
        HarmKind.Overheats => "One hand on the supply's switch, the other off the loom: off at the first smell or warmth.",
        HarmKind.ShortsSupply => "The small fuse only, and the wires looked over end by end before it goes in.",
        HarmKind.PastRating => "Read every mark aloud against the plan before the clip goes on; the box's plug last.",
        HarmKind.StarterTurns => "The starter clamped, its cable off battery plus until all else is done.",
        HarmKind.PumpRuns => "The pump's lead off and capped until its own stage.",
        HarmKind.CoilFed => "Its lead off and capped until its own stage; then power for seconds only.",
        HarmKind.EngineRunsOn => "A hand on the black clip: it stops whatever the switch does not.",
        _ => throw new InvalidOperationException("a harm of no known kind"),
    };
}
