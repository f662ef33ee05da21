using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Dictionary;

/// <summary>How the healthy wiring went through every operation, and what there was to see.</summary>
/// <param name="Settled">By node of the script tree.</param>
/// <param name="Used">The operating points needed for each node.</param>
/// <param name="Looks">After each stimulus.</param>
/// <param name="LookedAt">The operating points needed for each look.</param>
/// <param name="Solves">Operating points found.</param>
internal sealed record Sound(Settled[] Settled, NearPoint?[][] Used, ImmutableArray<Look> Looks, NearPoint?[][] LookedAt, int Solves);

/// <summary>Plays all stimuli on one wiring, whatever begins alike only once.</summary>
internal sealed class Player(ScriptTree tree, ImmutableArray<Stimulus> stimuli, FullLight fullLight, ImmutableArray<TerminalRef> points, CancellationToken stop)
{
    /// <summary>Plays them on the healthy wiring and keeps how it went.</summary>
    /// <param name="wiring">The healthy wiring.</param>
    /// <param name="near">Where its operating points are kept, or null.</param>
    public Sound PlayHealthy(Wiring wiring, Near? near)
    {
        var settler = new Settler(wiring, coldStart: true, known: null, near);
        var viewer = new Viewer(wiring, settler, fullLight, points);
        var settled = new Settled[tree.Nodes.Count];
        var used = new NearPoint?[settled.Length][];
        for (var n = 0; n < settled.Length; n++)
        {
            stop.ThrowIfCancellationRequested();
            settled[n] = After(wiring, settler, n, settled);
            used[n] = near?.TakeUsed() ?? [];
        }

        var looks = ImmutableArray.CreateBuilder<Look>(stimuli.Length);
        NearPoint?[][] lookedAt = [.. stimuli.Select(_ => Array.Empty<NearPoint?>())];
        for (var s = 0; s < stimuli.Length; s++)
        {
            var end = tree.Ends[s];
            looks.Add(viewer.Of(settled[end]));
            if (near is not null)
            {
                // What is seen hangs on every phase of what flashes, though the meter looked at one.
                settler.AtRest(settled[end].State);
                lookedAt[s] = [.. near.TakeUsed(), .. settled[end].Outcome == Outcome.Settled ? [] : used[end]];
            }
        }

        return new Sound(settled, used, looks.MoveToImmutable(), lookedAt, settler.Solves);
    }

    /// <summary>What there is to see after each stimulus.</summary>
    /// <param name="wiring">One that is not healthy.</param>
    /// <param name="sound">How the healthy one went.</param>
    /// <param name="near">The healthy one's operating points, or null.</param>
    /// <param name="difference">Where the two differ, or null: everything is played to the end.</param>
    /// <param name="solves">Operating points found.</param>
    public ImmutableArray<Look> Play(Wiring wiring, Sound sound, Near? near, Difference? difference, out int solves)
    {
        var settler = new Lazy<Settler>(() => new Settler(wiring, coldStart: true, known: null, near));
        var viewer = new Lazy<Viewer>(() => new Viewer(wiring, settler.Value, fullLight, points));
        var settled = new Settled[tree.Nodes.Count];
        for (var n = 0; n < settled.Length; n++)
        {
            stop.ThrowIfCancellationRequested();
            var begins = n == 0 || ReferenceEquals(settled[tree.Nodes[n].Parent], sound.Settled[tree.Nodes[n].Parent]);
            settled[n] = difference is not null && begins && !Any(sound.Used[n], difference.Felt) ? sound.Settled[n] : After(wiring, settler.Value, n, settled);
        }

        var looks = ImmutableArray.CreateBuilder<Look>(stimuli.Length);
        for (var s = 0; s < stimuli.Length; s++)
        {
            var end = settled[tree.Ends[s]];
            looks.Add(!ReferenceEquals(end, sound.Settled[tree.Ends[s]]) ? viewer.Value.Of(end)
                : !Any(sound.LookedAt[s], difference!.Shown) ? sound.Looks[s]
                : viewer.Value.Of(end.Outcome == Outcome.Settled ? settler.Value.AtRest(end.State) : After(wiring, settler.Value, tree.Ends[s], settled)));
        }

        solves = settler.IsValueCreated ? settler.Value.Solves : 0;
        return looks.MoveToImmutable();
    }

    /// <summary>How it settles when one more thing is done.</summary>
    public static Settled After(Settler settler, Settled before, ScriptTree.Node node) => node.Control >= 0
        ? settler.Settle(Time.Moved(before.State, node.Control, node.Position))
        : Time.Pass(settler, before, node.Wait).Last().Settled;

    private Settled After(Wiring wiring, Settler settler, int node, Settled[] settled) =>
        node == 0 ? settler.Settle(wiring.Start()) : After(settler, settled[tree.Nodes[node].Parent], tree.Nodes[node]);

    private static bool Any(NearPoint?[] points, bool[] marked)
    {
        foreach (var point in points)
        {
            if (point is null || marked[point.Place])
            {
                return true;
            }
        }

        return false;
    }
}
