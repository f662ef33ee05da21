using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Dictionary;

/// <summary>Makes the looks of all circuits, on several threads.</summary>
internal sealed class Making(Wiring healthy, ImmutableArray<DistinctCircuit> circuits, ImmutableArray<Stimulus> stimuli, ImmutableArray<TerminalRef> points, DictionaryOptions options)
{
    private readonly ParallelOptions _parallel = new() { MaxDegreeOfParallelism = Math.Max(1, options.Workers), CancellationToken = options.Stop };
    private readonly Player _player = new(new ScriptTree(healthy, stimuli), stimuli, FullLight.Of(options.FullLight ?? healthy.Loom), points, options.Stop);
    private long _solves;

    public (ImmutableArray<Look>[] Looks, long Solves) Looks()
    {
        var near = options.Shortcuts ? new Near(healthy) : null;
        var sound = _player.PlayHealthy(healthy, near);
        _solves = sound.Solves;
        var differences = near is null ? null : Differences(near);
        var looks = new ImmutableArray<Look>[circuits.Length];
        looks[0] = sound.Looks;
        Parallel.For(1, circuits.Length, _parallel, e =>
        {
            looks[e] = _player.Play(circuits[e].Wiring, sound, near, differences?[e], out var solves);
            Interlocked.Add(ref _solves, solves);
        });
        return (looks, _solves);
    }

    // For every circuit, what is felt at which of the healthy wiring's operating points.
    private Difference[] Differences(Near near)
    {
        var edits = circuits.Select(c => c.Decides(healthy) ? null : Edits.Between(healthy, c.Wiring)).ToArray();
        var differences = edits.Select(e => new Difference(e is null ? near.InOrder.Count : 0, near.InOrder.Count)).ToArray();
        Parallel.ForEach(near.InOrder, _parallel, () => new Felt(healthy, points), (point, _, felt) =>
        {
            for (var e = 1; e < edits.Length; e++)
            {
                if (edits[e] is { } edit)
                {
                    (differences[e].Felt[point.Place], differences[e].Shown[point.Place]) = felt.At(point, edit);
                }
            }

            return felt;
        }, _ => { });
        return differences;
    }
}

/// <summary>By place of the healthy wiring's operating points: whether a difference is felt there, and whether a meter shows it.</summary>
internal sealed class Difference
{
    /// <param name="felt">How many of them feel it before anything is known.</param>
    /// <param name="count">How many there are.</param>
    public Difference(int felt, int count)
    {
        Felt = new bool[count];
        Shown = new bool[count];
        Array.Fill(Felt, true, 0, felt);
    }

    public bool[] Felt { get; }

    public bool[] Shown { get; }
}
