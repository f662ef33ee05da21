using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Output;

/// <summary>One thing to be seen in a frame.</summary>
/// <param name="Group">What is told together: <c>box outputs</c>; empty for what stands alone.</param>
/// <param name="What">Its name: <c>X4 (stop lamp)</c>, <c>rear cluster stop</c>.</param>
/// <param name="Is">The word for it now.</param>
/// <param name="AtRest">The word for it while nothing is on.</param>
internal sealed record Fact(string Group, string What, string Is, string AtRest)
{
    /// <summary>Everything to be seen, boxes first, in file order.</summary>
    public static IEnumerable<Fact> Of(Frame frame)
    {
        foreach (var box in frame.Controllers)
        {
            yield return new("", box.Part, Says.Awake(box.Awake), Says.Awake(false));
            foreach (var input in box.Inputs)
            {
                yield return new($"{box.Part} inputs", Marked(input.Terminal, input.Name), Says.Input(input.Active), Says.Input(false));
            }

            foreach (var output in box.Outputs)
            {
                yield return new($"{box.Part} outputs", Marked(output.Terminal, output.Name), Words.Of(output.State), Words.Of(OutputState.Off));
            }

            foreach (var light in box.Lights)
            {
                yield return new($"{box.Part} lights", light.Terminal, Words.OfLight(light.Symbol), Words.OfLight(Symbol.Dark));
            }
        }

        foreach (var seen in frame.Seen)
        {
            yield return new("", Words.Name(seen.Name), Words.Of(seen.Symbol), Words.Of(seen.LightShare is null ? Symbol.Silent : Symbol.Dark));
        }

        foreach (var fuse in frame.Fuses)
        {
            yield return new("", fuse.Part, Words.Of(fuse.State), Words.Of(FuseState.Whole));
        }
    }

    /// <summary>What differs from the frame before, a line a group; for the first frame what is not at rest.</summary>
    public static IEnumerable<string> Changes(Frame? before, Frame now)
    {
        // What an unsolved frame leaves out counts as at rest.
        var earlier = (before is null ? [] : Of(before)).ToDictionary(f => (f.Group, f.What), f => f.Is);
        var changed = Of(now)
            .Select(f => (Fact: f, Was: earlier.GetValueOrDefault((f.Group, f.What), f.AtRest)))
            .Where(c => c.Fact.Is != c.Was)
            .ToList();
        foreach (var (fact, was) in changed.Where(c => c.Fact.Group.Length == 0))
        {
            yield return before is null ? $"{fact.What}: {fact.Is}" : $"{fact.What}: {was} → {fact.Is}";
        }

        foreach (var group in changed.Select(c => c.Fact).Where(f => f.Group.Length > 0).GroupBy(f => f.Group, StringComparer.Ordinal))
        {
            yield return $"{group.Key}: {string.Join(", ", group.Select(f => $"{f.What} {f.Is}"))}";
        }
    }

    private static string Marked(string mark, string name) => Names.Same(mark, name) ? mark : $"{mark} ({name})";
}
