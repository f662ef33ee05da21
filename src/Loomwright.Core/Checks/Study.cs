using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Sizing;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A design being checked: what several rules look at is worked out once, when the first of them asks. Not for two threads at once.</summary>
public sealed class Study
{
    private Paths? _paths;
    private Guards? _guards;
    private Tried? _tried;
    private Poses? _poses;
    private Rig? _rig;
    private ImmutableArray<WireBehind>? _behind;

    public Study(Loom loom) => Loom = loom;

    public Loom Loom { get; }

    /// <summary>What is joined to what as drawn.</summary>
    internal Paths Paths => _paths ??= new Paths(Loom);

    /// <summary>What stands before each wire.</summary>
    internal Guards Guards => _guards ??= new Guards(Loom);

    /// <summary>The wires whose guard is too large for them.</summary>
    internal ImmutableArray<WireBehind> Behind => _behind ??= WireBehind.In(this);

    /// <summary>The bike operated to where it draws most.</summary>
    internal Tried Tried => _tried ??= new Tried(Loom);

    /// <summary>The bike with its controls here and there.</summary>
    internal Poses Poses => _poses ??= new Poses(Paths, Loom);

    /// <summary>The bike to operate; <see cref="Rig.Reset"/> it before use.</summary>
    internal Rig Rig => _rig ??= new Rig(Loom);

    /// <summary>Both ends of every wire, in file order: the wire, where it ends, and what the file says is crimped on.</summary>
    internal IEnumerable<(Wire Wire, TerminalRef At, string? End)> Ends => Loom.Wires.SelectMany(w => new[] { (w, w.From, w.FromEnd), (w, w.To, w.ToEnd) });

    /// <summary>Everything a hand can operate, in file order; what several parts share is there once.</summary>
    internal ImmutableArray<Control> Controls => [.. Paths.Built.SelectMany(p => p.Model.Controls).DistinctBy(c => c.Name, Names.Comparer)];
}
