using System.Collections.Concurrent;
using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Walk;

/// <summary>What all workers of one walk have in common.</summary>
internal sealed class Shared
{
    private readonly ConcurrentDictionary<Inside, Inside> _insides = new();

    public Shared(Loom loom, Loom healthy)
    {
        Wiring = Wiring.Of(loom);
        Start = Wiring.Start();
        FullLight = FullLight.Of(healthy);
        Solved = new Solved(Wiring);
        Promises = new Promises(Wiring, loom.Functions);
        Settings = new Settings(Wiring);
        Timers = new Timers(Wiring, Promises, Solved);
    }

    public Wiring Wiring { get; }

    public State Start { get; }

    public FullLight FullLight { get; }

    public Solved Solved { get; }

    public Promises Promises { get; }

    public Settings Settings { get; }

    public Timers Timers { get; }

    /// <summary>The one instance kept for all equal ones, so that they can be told apart by reference.</summary>
    public Inside Same(Inside inside) => _insides.GetOrAdd(inside, inside);
}
