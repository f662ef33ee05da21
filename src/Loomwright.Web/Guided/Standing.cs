using System.Text.Json;
using Loomwright.Bench;
using Loomwright.Records;
using Loomwright.Sessions;

namespace Loomwright.Web.Guided;

/// <summary>Where the work along a plan stands.</summary>
internal static class Standing
{
    /// <summary>The stage of the last answer; the first one before any. Null when the plan has no stages.</summary>
    public static Stage? Stage(Plan plan, IEnumerable<Entry> entries)
    {
        var last = entries.LastOrDefault(e => e.Kind != EntryKind.Undo)?.Step;
        return plan.Stages.FirstOrDefault(s => Judging.Gate(s) == last || s.Steps.Any(step => step.Id == last)) ?? plan.Stages.FirstOrDefault();
    }

    /// <summary>Whether the supply is measured by itself at a step: live, and nothing on it.</summary>
    public static bool IsBare(Stage stage, Step step) => step is { PowerOn: true, Do: null, Meter.Dial: Dial.Volts } && step == First(stage);

    /// <summary>What brings the loom from power back to where the ohms are read; a fuse for riding stays out.</summary>
    public static IEnumerable<Step> PutBack(Stage stage) => stage.Steps.Where(s => s is { Act: Act.PowerDown, Part: null });

    /// <summary>The steps of the stages before one, as the page's script reads them: each with its id, whether it is a check, and whether it comes at the gate or later.</summary>
    public static string Earlier(Plan plan, Stage stage) => JsonSerializer.Serialize(plan.Stages.TakeWhile(s => s != stage).Select(s => new { number = s.Number, steps = Steps(s) }));

    private static IEnumerable<object> Steps(Stage stage)
    {
        var isLate = false;
        foreach (var step in stage.Steps)
        {
            if (step == First(stage))
            {
                isLate = true;
                yield return new { id = Judging.Gate(stage), check = false, late = true };
            }

            yield return new { id = step.Id, check = !step.Expect.IsEmpty, late = isLate };
        }
    }

    /// <summary>The first step of first power, before which the gate stands; null where a stage has none.</summary>
    public static Step? First(Stage stage) => stage.Steps.FirstOrDefault(s => s.Act == Act.PowerUp);
}
