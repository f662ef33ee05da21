using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>What each brake switch lights: tried from every pose that could matter.</summary>
/// <param name="Part">The switch.</param>
/// <param name="Senses">front brake or rear brake.</param>
/// <param name="Lights">Places of the lamps it lights, and how each of them then is.</param>
internal sealed record Brakes(Part Part, string Senses, ImmutableDictionary<int, Symbol> Lights)
{
    /// <summary>The wired brake switches, in file order.</summary>
    public static ImmutableArray<Brakes> In(Poses poses) =>
    [
        .. from part in poses.Paths.Loom.Parts
           where Names.Same(part.Kind, "sensor switch") && poses.Paths.IsWired(part)
           let senses = part.Settings.Word("senses")
           where senses is not null && (Names.Same(senses, "front brake") || Names.Same(senses, "rear brake"))
           select new Brakes(part, senses, Lit(poses, poses.Control(part.Name))),
    ];

    private static ImmutableDictionary<int, Symbol> Lit(Poses poses, int control)
    {
        var lit = ImmutableDictionary.CreateBuilder<int, Symbol>();
        foreach (var pose in poses.Bases(control))
        {
            var (released, applied) = (poses.At(pose.Positions.With(control, poses.Rest.Positions[control])), poses.At(pose.Positions.With(control, 1 - poses.Rest.Positions[control])));
            foreach (var s in Enumerable.Range(0, Math.Min(released.Seen.Length, applied.Seen.Length)).Where(s => poses.Wiring.Sights[s].Sight is Parts.Sight.Lamp))
            {
                if (!Poses.IsOn(released.Seen[s].Symbol) && Poses.IsOn(applied.Seen[s].Symbol))
                {
                    lit[s] = applied.Seen[s].Symbol;
                }
            }
        }

        return lit.ToImmutable();
    }
}
