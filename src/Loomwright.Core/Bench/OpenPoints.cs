using System.Collections.Immutable;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>What the plan as a whole does not show.</summary>
internal static class OpenPoints
{
    public static IEnumerable<string> Of(Survey survey, Reach reached, ImmutableArray<Stage> stages)
    {
        var loom = survey.Paths.Loom;
        var left = loom.Wires.Where(w => !reached.Wires.Contains(w.Name, Names.Comparer)).Select(w => w.Name).ToList();
        if (left.Count > 0)
        {
            yield return $"Wires no stage connects: {string.Join(", ", left)}.";
        }

        foreach (var standIn in loom.StandIns.Where(s => reached.Parts.Contains(s.For, Names.Comparer)))
        {
            yield return $"{standIn.This} stands in for {standIn.For}: {standIn.For} itself is not shown.";
        }

        var done = stages.SelectMany(s => s.Steps).Where(s => s.PowerOn).Select(s => s.Do).Where(d => d is not null).Select(d => (Names.Fold(d!.Control), Names.Fold(d.Position))).ToHashSet();
        foreach (var control in survey.Controls.Where(c => reached.Parts.Contains(c.Name, Names.Comparer)))
        {
            var never = control.Positions.Where(p => !Names.Same(p, control.Rest) && !done.Contains((Names.Fold(control.Name), Names.Fold(p)))).ToList();
            if (never.Count > 0)
            {
                yield return $"{control.Name} is not powered at {string.Join(", ", never)}.";
            }
        }

        if (stages.Length > 0 && stages[^1].FirstFuse is { Final: { } final } fuse && final.Amps != fuse.Rating.Amps)
        {
            yield return $"The {final.Printed} fuse that stays is not fitted on the bench: the last stage runs on {fuse.Rating.Printed}.";
        }

        if (stages.Length > 0)
        {
            yield return "A lamp that lights can still hide a poor joint: only the volts read at it show that.";
        }
    }
}
