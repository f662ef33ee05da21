using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>One small lamp between left and right that returns through the lamps of the other side: with LED lamps both sides light.</summary>
internal static class SharedTellTale
{
    // More across it than the two ends of one hazard circuit differ by.
    private const double AcrossVolts = 0.2;

    public static Rule Rule { get; } = new(
        "shared-tell-tale",
        Severity.Look,
        Severity.Look,
        "One tell-tale between left and right that lights the other side too, or only shows one side.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        return [.. Enumerable.Range(0, poses.Wiring.Sights.Length).Where(s => IsBetween(poses, s)).Select(s => Of(poses, s)).OfType<Finding>()];
    }

    // Neither end is on a rail; each leads on to other lamps.
    private static bool IsBetween(Poses poses, int sight)
    {
        static bool Fixed(Tie tie) => tie.Via is Via.Wire or Via.Joint or Via.Fuse;
        if (poses.Paths.Source is null || poses.Wiring.Sights[sight].Sight is not Sight.Lamp)
        {
            return false;
        }

        var rails = poses.Paths.Joined(poses.Paths.Feed, Fixed);
        rails.UnionWith(poses.Paths.Joined(poses.Paths.Return, Fixed));
        return Ends(poses, sight) is var (a, b) && Beside(poses, sight, a).Any() && Beside(poses, sight, b).Any()
            && !rails.Contains(a) && !rails.Contains(b);
    }

    private static (TerminalRef A, TerminalRef B) Ends(Poses poses, int sight)
    {
        var place = poses.Wiring.Sights[sight];
        var element = poses.Paths.Models[place.Part].Elements.First(e => e.Name == place.Sight.Element);
        return (new TerminalRef(place.Part, element.From), new TerminalRef(place.Part, element.To));
    }

    // Other lamps that wires alone join to an end.
    private static IEnumerable<int> Beside(Poses poses, int sight, TerminalRef end)
    {
        var joined = poses.Paths.Joined(end, t => t.Via is Via.Wire or Via.Joint);
        return Enumerable.Range(0, poses.Wiring.Sights.Length).Where(s => s != sight && poses.Wiring.Sights[s].Sight is Sight.Lamp && Ends(poses, s) is var (a, b) && (joined.Contains(a) || joined.Contains(b)));
    }

    private static Finding? Of(Poses poses, int sight)
    {
        var (a, b) = Ends(poses, sight);
        var (one, other) = (Beside(poses, sight, a).ToList(), Beside(poses, sight, b).ToList());
        var driven = poses.All.Where(m => Math.Abs(poses.Of(m, poses.Wiring.Sights[sight].Link).Volts) > AcrossVolts).ToList();
        var name = Words.Name(poses.Wiring.Sights[sight].Name);
        if (driven.FirstOrDefault(m => one.Any(s => Poses.IsOn(m.Seen[s].Symbol)) && other.Any(s => Poses.IsOn(m.Seen[s].Symbol))) is { } both)
        {
            return Found(poses, sight, "With {how} current runs through {lamp} into the other side: {lit} light together.", both, one.Concat(other).Where(s => Poses.IsOn(both.Seen[s].Symbol)), name);
        }

        var shows = driven.Where(m => Poses.IsOn(m.Seen[sight].Symbol)).ToList();
        return shows.Count > 0 && driven.FirstOrDefault(m => !Poses.IsOn(m.Seen[sight].Symbol)) is { } dark
            ? Found(poses, sight, "With {how} {lamp} stays dark while {lit} light: an LED shows one side only.", dark, one.Concat(other).Where(s => Poses.IsOn(dark.Seen[s].Symbol)), name)
            : null;
    }

    private static Finding Found(Poses poses, int sight, string what, Pose pose, IEnumerable<int> lit, string name) => new(
        Rule.Code,
        Severity.Look,
        new Subject.OfPart(poses.Wiring.Sights[sight].Part),
        what,
        "One tell-tale for both sides returns through the lamps of the other side. That works with filaments, which stay dark at so little; LED lamps light at it.",
        "Feed {lamp} through two diodes, one from each side, and give it a ground of its own. Or fit one tell-tale for each side.",
        [
            Evidence.Of("lamp", name),
            Evidence.Of("how", poses.How(pose)),
            Evidence.Of("lit", string.Join(", ", lit.Distinct().Order().Select(s => Words.Name(poses.Wiring.Sights[s].Name)))),
        ]);
}
