using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>What a kill switch does to the ignition: tried at run and at stop from every pose that could matter.</summary>
internal sealed record KillSwitches(Part Part, int Control, ImmutableArray<(Pose Run, Pose Stop, int Sight)> Tries)
{
    private static readonly ImmutableArray<string> Ignition = ["ignition coil", "injection unit"];

    /// <summary>Every wired kill switch of a design that has an ignition to stop.</summary>
    public static ImmutableArray<KillSwitches> In(Poses poses) =>
    [
        .. poses.Paths.Loom.Parts
            .Where(p => Names.Same(p.Kind, "kill switch") && poses.Paths.IsWired(p))
            .Select(p => new KillSwitches(p, poses.Control(p.Name), Pairs(poses, poses.Control(p.Name))))
            .Where(k => !k.Tries.IsEmpty),
    ];

    /// <summary>Whether the ignition works at run …</summary>
    public bool Runs => Tries.Any(t => Poses.IsOn(t.Run.Seen[t.Sight].Symbol));

    /// <summary>… and whether it works at stop.</summary>
    public bool RunsStopped => Tries.Any(t => Poses.IsOn(t.Stop.Seen[t.Sight].Symbol));

    /// <summary>What it stops, by the owner's names.</summary>
    public string Stops(Poses poses) => string.Join(" and ", Tries.Select(t => Words.Name(poses.Wiring.Sights[t.Sight].Name)).Distinct(StringComparer.Ordinal));

    private static ImmutableArray<(Pose, Pose, int)> Pairs(Poses poses, int control)
    {
        var sights = Sights(poses, control);
        return
        [
            .. from pose in poses.Bases(control)
               let run = poses.At(pose.Positions.With(control, 0))
               let stop = poses.At(pose.Positions.With(control, 1))
               where !run.Seen.IsEmpty && !stop.Seen.IsEmpty
               from s in sights
               where Poses.IsOn(run.Seen[s].Symbol) || Poses.IsOn(stop.Seen[s].Symbol)
               select (run, stop, s),
        ];
    }

    // Coils and injection; else what the functions say the switch is for.
    private static ImmutableArray<int> Sights(Poses poses, int control)
    {
        var name = poses.Wiring.Controls[control].Name;
        var named = poses.Paths.Loom.Functions.Where(f => f.Works.NamesUsed().Contains(name, Names.Comparer)).SelectMany(f => f.Shows).Where(s => s.Symbol == "works").Select(s => s.What).ToList();
        return
        [
            .. Enumerable.Range(0, poses.Wiring.Sights.Length).Where(s => poses.Wiring.Sights[s] is var sight
                && (Ignition.Contains(poses.Paths.Loom.Part(sight.Part)!.Kind, Names.Comparer) || named.Contains(sight.Part, Names.Comparer))),
        ];
    }
}
