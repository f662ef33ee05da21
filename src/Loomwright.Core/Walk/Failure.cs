using System.Collections.Immutable;
using Loomwright.Simulation;

namespace Loomwright.Walk;

/// <summary>Why the walk does not go on from a state.</summary>
internal sealed record Failure(SurpriseKind Kind, ImmutableArray<PartSurprise> Parts, ImmutableArray<string> Events)
{
    /// <summary>What went wrong while it settled; null when nothing did.</summary>
    public static Failure? Of(Wiring wiring, Settled settled) => settled.Outcome switch
    {
        Outcome.SwitchesByItself => Whole(wiring, settled, SurpriseKind.SwitchesByItself, "switches on and off by itself"),
        Outcome.Race => Whole(wiring, settled, SurpriseKind.Race, "depends on which of its inputs is looked at first"),
        Outcome.UndefinedInput => Whole(wiring, settled, SurpriseKind.UndefinedInput, "cannot tell an input"),
        Outcome.Unsolved => Whole(wiring, settled, SurpriseKind.Unsolved, "no answer was found"),
        _ when settled.State.Blown.AsSpan().Contains(true) => new Failure(SurpriseKind.FuseBlows, Blown(wiring, settled.State), settled.Events),
        _ when AnyTripped(settled.State) => new Failure(SurpriseKind.OutputTrips, Tripped(wiring, settled.State), settled.Events),
        _ => null,
    };

    private static Failure Whole(Wiring wiring, Settled settled, SurpriseKind kind, string seen) =>
        new(kind, [new PartSurprise(wiring.Boxes.IsEmpty ? "the bike" : string.Join(" and ", wiring.Boxes.Select(b => b.Part)), "comes to rest", seen)], settled.Events);

    private static ImmutableArray<PartSurprise> Blown(Wiring wiring, State state) =>
        [.. wiring.Fuses.Where((_, f) => state.Blown[f]).Select(f => new PartSurprise(f.Part, "whole", "blown"))];

    private static bool AnyTripped(State state)
    {
        foreach (var box in state.Boxes.AsSpan())
        {
            if (box.Tripped.AsSpan().Contains(true))
            {
                return true;
            }
        }

        return false;
    }

    private static ImmutableArray<PartSurprise> Tripped(Wiring wiring, State state) =>
    [
        .. from b in Enumerable.Range(0, wiring.Boxes.Length)
           from o in Enumerable.Range(0, wiring.Boxes[b].OutputLinks.Length)
           where state.Boxes[b].Tripped[o]
           select new PartSurprise($"{wiring.Boxes[b].Part}.{wiring.Boxes[b].Facts.Outputs[o].Terminal}", "on", "tripped"),
    ];
}
