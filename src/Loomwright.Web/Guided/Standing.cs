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

    /// <summary>The first step of first power, before which the gate stands; null where a stage has none.</summary>
    public static Step? First(Stage stage) => stage.Steps.FirstOrDefault(s => s.Act == Act.PowerUp);
}
