using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Finds, by simulation, what to operate so that something happens: fewest operations first, ties by file order.</summary>
internal sealed class Trials(Loom loom, ImmutableArray<Control> controls)
{
    private const int MostOperations = 3;
    private const int Hands = 2;

    private readonly Rig _rig = new(loom);

    /// <summary>The shortest operations after which the frame is as wanted; null when none is.</summary>
    /// <param name="wanted">What should be so.</param>
    /// <param name="before">Operations from rest that come first.</param>
    /// <param name="using_">Names of the controls to try besides.</param>
    public ImmutableArray<Operation.Set>? Shortest(Func<Frame, bool> wanted, ImmutableArray<Operation.Set> before, IReadOnlyCollection<string> using_)
    {
        var usable = controls.Where(c => using_.Contains(c.Name, Names.Comparer)).ToImmutableArray();
        ImmutableArray<ImmutableArray<Operation.Set>> tries = [before];
        for (var length = 0; length <= MostOperations; length++)
        {
            foreach (var operations in tries)
            {
                if (wanted(After(operations)))
                {
                    return operations;
                }
            }

            tries = [.. tries.SelectMany(t => Longer(t, usable, before.Length))];
        }

        return null;
    }

    /// <summary>The bike after operations from rest, power just connected.</summary>
    public Frame After(ImmutableArray<Operation.Set> operations)
    {
        _rig.Reset();
        foreach (var operation in operations)
        {
            _rig.Do(operation);
        }

        return _rig.Now;
    }

    // Switches before buttons, each in file order: the key is turned before a hand is needed to hold something, and a hand holds one thing.
    private IEnumerable<ImmutableArray<Operation.Set>> Longer(ImmutableArray<Operation.Set> operations, ImmutableArray<Control> usable, int fixedCount)
    {
        var held = operations.Count(o => Of(o).Momentary);
        if (held == Hands)
        {
            return [];
        }

        var last = operations.Length > fixedCount ? Of(operations[^1]) : null;
        return usable
            .Where(c => !operations.Any(o => Names.Same(o.Control, c.Name)) && (held == 0 || c.Momentary))
            .Where(c => last is null || last.Momentary != c.Momentary || controls.IndexOf(c) > controls.IndexOf(last))
            .SelectMany(c => c.Positions.Where(p => !Names.Same(p, c.Rest)).Select(p => operations.Add(new Operation.Set(c.Name, p))));
    }

    private Control Of(Operation.Set operation) => controls.First(c => Names.Same(c.Name, operation.Control));
}
