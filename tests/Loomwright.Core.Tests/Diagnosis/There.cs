using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Tests.Diagnosis;

/// <summary>A bike that stands there: what it shows and what a meter reads, simulated to the end where it is asked for and nowhere else.</summary>
internal sealed class There
{
    private readonly Wiring _wiring;
    private readonly ScriptTree _tree;
    private readonly Settler _settler;
    private readonly Viewer _viewer;
    private readonly Settled?[] _settled;
    private readonly Look?[] _looks;

    /// <param name="world">As it stands there, with what is wrong with it.</param>
    /// <param name="designed">By which full light is measured.</param>
    /// <param name="table">What may be done and where probes may go.</param>
    /// <param name="eyes">What is found at the things themselves.</param>
    public There(Loom world, Loom designed, FaultTable table, Eyes eyes)
    {
        Eyes = eyes;
        _wiring = Wiring.Of(world);
        _tree = new ScriptTree(_wiring, table.Stimuli);
        _settler = new Settler(_wiring, coldStart: true, known: null, near: null);
        _viewer = new Viewer(_wiring, _settler, FullLight.Of(designed), table.Points);
        _settled = new Settled?[_tree.Nodes.Count];
        _looks = new Look?[table.Stimuli.Length];
    }

    public Eyes Eyes { get; }

    /// <summary>After a stimulus, by its place.</summary>
    public Look After(int stimulus) => _looks[stimulus] ??= _viewer.Of(At(_tree.Ends[stimulus]));

    private Settled At(int node) => _settled[node] ??= node == 0 ? _settler.Settle(_wiring.Start()) : Player.After(_settler, At(_tree.Nodes[node].Parent), _tree.Nodes[node]);
}
