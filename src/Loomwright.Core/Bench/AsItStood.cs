using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>How everything stood while a step was looked at or read, so that its line is understood without the plan at hand.</summary>
public static class AsItStood
{
    /// <summary>
    /// <c>power off, fuse out of main fuse, lock at riding</c>: the tips where volts were read, power, fuses out, plugs off, and
    /// every control that was not at rest. Controls follow from what the stage's steps do, up to and with this one.
    /// </summary>
    public static string Of(Stage stage, Step step)
    {
        var off = step.Unplugged.ToLookup(u => stage.Connected.Part(u) is { } part && Fetching.IsFuse(part));
        return string.Join(", ", [.. Tips(step), step.PowerOn ? "power on" : "power off", .. off[true].Select(f => $"fuse out of {f}"), .. off[false].Select(p => $"{p} unplugged"), .. Moved(stage, step)]);
    }

    // What is read in ohms is called by its two ends, volts by the load alone.
    private static string[] Tips(Step step) => step.Meter is { Dial: Dial.Volts } meter ? [$"red on {meter.RedTip}", $"black on {meter.BlackTip}"] : [];

    private static IEnumerable<string> Moved(Stage stage, Step step)
    {
        var at = new Dictionary<string, string>(Names.Comparer);
        foreach (var done in stage.Steps.TakeWhile(s => s.Id != step.Id).Append(step).Select(s => s.Do).OfType<Operation.Set>())
        {
            at[done.Control] = done.Position;
        }

        return from part in stage.Connected.Parts
               from control in Kinds.Find(part.Kind)?.Build(part).Controls ?? []
               where at.TryGetValue(control.Name, out var position) && !Names.Same(position, control.Rest)
               select $"{(stage.Lying(part.Name) is var lying && lying != part.Name ? lying : control.Name)} at {at[control.Name]}";
    }
}
