using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Text;

namespace Loomwright.Proof;

/// <summary>What is measured with a fuse out, done for each fuse in one go: out, measure, measure, and back in as a step of its own.</summary>
internal static class FusesOut
{
    public static Stage In(Stage stage)
    {
        var out_ = stage.Steps.Where(s => Fuse(s) is not null).GroupBy(s => Fuse(s)!, Names.Comparer).ToImmutableArray();
        if (out_.IsEmpty)
        {
            return stage;
        }

        var at = stage.Steps.IndexOf(out_[0].First());
        var told = out_.SelectMany(g => g.Select((s, i) => Told(s, g.Key, i == 0)).Append(Back(g.Key, g.Last())));
        return stage with { Steps = stage.Steps.RemoveAll(s => Fuse(s) is not null).InsertRange(at, told) };

        string? Fuse(Step step) => step.Act != Act.Measure ? null : step.Unplugged.FirstOrDefault(u => Fetching.IsFuse(stage.Connected.Part(u)!));
    }

    private static Step Told(Step step, string fuse, bool isFirst) => step with
    {
        Text = $"{(isFirst ? "Take the fuse out of" : "The fuse still out of")} {fuse}. {step.Text}",
    };

    private static Step Back(string fuse, Step last) => new($"{last.Id}-back", Act.Measure, $"Put the fuse back into {fuse}.") { Part = fuse };
}
