using System.Text.Json;
using System.Text.Json.Serialization;
using Loomwright.Bench;
using Loomwright.Quantities;
using Loomwright.Records;
using Loomwright.Sessions;

namespace Loomwright.Web.Guided;

/// <summary>Where the work along a plan stands.</summary>
internal static class Standing
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web) { DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault, NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

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

    /// <summary>The stages of a plan as the page's script judges them: each step with what it is, and the gate where it stands.</summary>
    public static string Stages(Plan plan) => JsonSerializer.Serialize(plan.Stages.Select(s => new { Number = (int?)s.Number, Steps = Steps(s) }), Options);

    private static IEnumerable<Judged> Steps(Stage stage)
    {
        var (first, isLate) = (First(stage), false);
        foreach (var step in stage.Steps)
        {
            if (step == first)
            {
                isLate = true;
                yield return new(Judging.Gate(stage), "Gate") { Late = true, Again = true };
            }

            yield return new(step.Id, step.Act.ToString())
            {
                Late = isLate,
                Bare = IsBare(stage, step),
                Check = !step.Expect.IsEmpty,
                Again = isLate || !step.Expect.IsEmpty || Prepares(step),
                Part = step.Act is Act.Connect or Act.PowerDown ? step.Part : null,
                Reads = step.Expect.Where(e => e.IsRead).Select(e => new Read(e.What, e.Band!.Least, e.Band.Most, e.Band.Unit == Unit.Ohm)).ToList() is { Count: > 0 } reads ? reads : null,
            };
        }
    }

    // What a check rests on: a fuse for now, a plug off or on again, a control moved back. A wire once on stays on.
    private static bool Prepares(Step step) => step is { Act: Act.TakeOut or Act.Connect or Act.Measure, Wire: null };

    /// <summary>The first step of first power, before which the gate stands; null where a stage has none.</summary>
    public static Step? First(Stage stage) => stage.Steps.FirstOrDefault(s => s.Act == Act.PowerUp);

    // Again: asked anew after a change. Part: what power-down puts back of it, by its name.
    private sealed record Judged(string Id, string Act)
    {
        public bool Late { get; init; }

        public bool Bare { get; init; }

        public bool Check { get; init; }

        public bool Again { get; init; }

        public string? Part { get; init; }

        public IReadOnlyList<Read>? Reads { get; init; }
    }

    private sealed record Read(string What, double? Least, double? Most, bool Ohms);
}
