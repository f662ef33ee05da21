using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>From the name of something seen to the element behind it and its two ends.</summary>
internal static class Sighted
{
    /// <summary>The element behind <c>part</c> or <c>part.element</c>.</summary>
    public static Tie Tie(Paths paths, string seen) => paths.Ties.First(t => t.Part is { } part && t.Element is { } element && paths.Models[part.Name].Sights.Any(s =>
        Names.Same(seen, s.Name.Length == 0 ? part.Name : $"{part.Name}.{s.Name}") && Names.Same(element.Name, s.Element)));

    /// <summary>Its end on the feed side and its end on the way back, as wired.</summary>
    public static (TerminalRef Feed, TerminalRef Back) Ends(Paths paths, Tie tie)
    {
        var back = paths.Joined(paths.Return, t => t.Via is Via.Wire or Via.Joint);
        return back.Contains(tie.A) && !back.Contains(tie.B) ? (tie.B, tie.A) : (tie.A, tie.B);
    }
}
