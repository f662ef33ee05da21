using System.Collections.Immutable;
using Loomwright.Simulation;

namespace Loomwright.Dictionary;

/// <summary>Plays all stimuli on one wiring, whatever begins alike only once.</summary>
internal sealed class Player(ScriptTree tree, ImmutableArray<Stimulus> stimuli, FullLight fullLight, DictionaryOptions options, ImmutableArray<Design.TerminalRef> points)
{
    /// <summary>What there is to see after each stimulus.</summary>
    /// <param name="wiring">Healthy or not.</param>
    /// <param name="solves">Goes up by the operating points found.</param>
    public ImmutableArray<Look> Play(Wiring wiring, ref int solves)
    {
        var settler = new Settler(wiring);
        var viewer = new Viewer(wiring, settler, fullLight, points);
        var settled = new Settled[tree.Nodes.Count];
        settled[0] = settler.Settle(wiring.Start());
        for (var n = 1; n < settled.Length; n++)
        {
            options.Stop.ThrowIfCancellationRequested();
            settled[n] = After(settler, settled[tree.Nodes[n].Parent], tree.Nodes[n]);
        }

        var looks = ImmutableArray.CreateBuilder<Look>(stimuli.Length);
        for (var s = 0; s < stimuli.Length; s++)
        {
            looks.Add(viewer.Of(settled[tree.Ends[s]]));
        }

        solves += settler.Solves;
        return looks.MoveToImmutable();
    }

    /// <summary>How it settles when one more thing is done.</summary>
    public static Settled After(Settler settler, Settled before, ScriptTree.Node node) => node.Control >= 0
        ? settler.Settle(Time.Moved(before.State, node.Control, node.Position))
        : Time.Pass(settler, before, node.Wait).Last().Settled;
}
