using System.Collections.Immutable;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>Whether the ignition is on, told by what only it feeds: the coil or the injection unit.</summary>
internal static class Ignitions
{
    private static readonly ImmutableArray<string> Kinds = ["ignition coil", "injection unit"];

    /// <summary>Places of what is seen of them.</summary>
    public static ImmutableArray<int> In(Poses poses) =>
        [.. Enumerable.Range(0, poses.Wiring.Sights.Length).Where(s => Kinds.Contains(poses.Paths.Loom.Part(poses.Wiring.Sights[s].Part)!.Kind, Names.Comparer))];

    public static bool IsOn(Pose pose, ImmutableArray<int> coils) => !pose.Seen.IsEmpty && coils.Any(s => Poses.IsOn(pose.Seen[s].Symbol));
}
