using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>A load controller whose own ground lead brings other loads' current back as well.</summary>
internal static class BoxGroundCarriesLoads
{
    public static Rule Rule { get; } = new(
        "box-ground-carries-loads",
        Severity.Look,
        Severity.Look,
        "Loads that return through the ground terminal of a load controller.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        return paths.Source is null ? [] :
        [
            .. from box in paths.Built
               where box.Model.Controller is not null
               let ground = new TerminalRef(box.Part.Name, box.Model.Controller!.Ground)
               let loads = Through(paths, ground)
               where loads.Count > 0
               select Found(paths, ground, loads),
        ];
    }

    // Loads that lose their way back when the terminal is taken out of it.
    private static List<string> Through(Paths paths, TerminalRef ground)
    {
        static bool IsGround(Tie t) => t.Via is Via.Wire or Via.Joint;
        var hang = paths.Joined(paths.Return, IsGround);
        hang.ExceptWith(paths.Joined(paths.Return, IsGround, new HashSet<TerminalRef> { ground }));
        hang.Add(ground);
        return
        [
            .. paths.Ties.Where(t => t.Via == Via.Load && t.Part!.Name != ground.Part && paths.Models[t.Part.Name].Controller is null && (hang.Contains(t.A) || hang.Contains(t.B)))
                .Select(t => t.Part!.Name).Distinct(StringComparer.Ordinal),
        ];
    }

    private static Finding Found(Paths paths, TerminalRef ground, List<string> loads) => new(
        Rule.Code,
        Severity.Look,
        new Subject.OfTerminal(ground),
        "There is no way back for {loads} but through {ground}, the box's own ground.",
        "Then the box's ground lead carries their current too, and what is lost in it lifts the box's own ground: inputs are read wrongly and everything on it is dim together. If that one lead comes loose, current looks for a way through the box.",
        "Take the grounds of the loads to the ground bar, and give the box a ground lead of its own that nothing else uses.",
        [
            Evidence.Of("loads", string.Join(", ", loads)),
            Evidence.Of("ground", Called.At(paths, ground)),
        ]);
}
