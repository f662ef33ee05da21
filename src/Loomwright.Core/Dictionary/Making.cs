using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Dictionary;

/// <summary>Makes the looks of all circuits, on several threads.</summary>
internal sealed class Making(Wiring healthy, ImmutableArray<DistinctCircuit> circuits, ImmutableArray<Stimulus> stimuli, ImmutableArray<TerminalRef> points, DictionaryOptions options)
{
    public (ImmutableArray<Look>[] Looks, long Solves) Looks()
    {
        var player = new Player(new ScriptTree(healthy, stimuli), stimuli, FullLight.Of(options.FullLight ?? healthy.Loom), options, points);
        var looks = new ImmutableArray<Look>[circuits.Length];
        var solves = 0L;
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, options.Workers), CancellationToken = options.Stop };
        Parallel.For(0, circuits.Length, parallel, () => 0, (e, _, done) =>
        {
            looks[e] = player.Play(circuits[e].Wiring, ref done);
            return done;
        }, done => Interlocked.Add(ref solves, done));
        return (looks, solves);
    }
}
