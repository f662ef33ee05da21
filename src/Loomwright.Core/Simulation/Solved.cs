using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Loomwright.Network;
using Loomwright.Parts;

namespace Loomwright.Simulation;

/// <summary>
/// What was worked out already, shared by all settlers of one wiring that are given it, on any number of threads: each
/// electrical configuration is solved once, and each box follows its rules once for one memory and one set of inputs.
/// Every configuration is solved from nothing, so an answer does not depend on what was asked before.
/// </summary>
/// <remarks>A kept picture is narrow: only what settling and watching read. Everything else reads as not-a-number, so that nothing can rest on it unnoticed.</remarks>
internal sealed class Solved
{
    private readonly int[] _nodes;
    private readonly int[] _links;
    private readonly ConcurrentDictionary<ulong[], Narrow?> _pictures = new(new SameWords());
    private readonly ConcurrentDictionary<ulong[], Narrow?>.AlternateLookup<ReadOnlySpan<ulong>> _byKey;
    private readonly ConcurrentDictionary<(BoxState Before, Row<bool> Inputs), BoxState>[] _steps;
    private readonly ConcurrentDictionary<BoxState, BoxState> _boxStates = new();

    public Solved(Wiring wiring)
    {
        _byKey = _pictures.GetAlternateLookup<ReadOnlySpan<ulong>>();
        _steps = [.. wiring.Boxes.Select(_ => new ConcurrentDictionary<(BoxState, Row<bool>), BoxState>(new SameBefore()))];
        Varying = VaryingOf(wiring);
        _nodes = [.. wiring.Boxes.SelectMany(b => b.InputNodes.Append(b.SupplyNode).Append(b.GroundNode).Append(b.Data.First)).Where(n => n >= 0).Distinct().Order()];
        _links =
        [
            .. wiring.Boxes.SelectMany(b => b.OutputLinks.Where(l => l >= 0))
                .Concat(BackFeeding(wiring).Select(l => l.Link))
                .Concat(wiring.Fuses.Select(f => f.Link))
                .Concat(wiring.Sights.Select(s => s.Link))
                .Concat(wiring.Supplies)
                .Concat(wiring.Colds)
                .Concat(wiring.Relays.SelectMany(r => r.Coils))
                .Concat(wiring.Flashers.Select(f => f.Link).Where(l => l >= 0))
                .Distinct()
                .Order(),
        ];
        var filaments = Enumerable.Range(0, wiring.Links.Length).Where(l => wiring.Links[l].Curve is Filament);
        Told = [.. _links.Union(filaments)];
        Circuit = new Shortened(wiring.Circuit(), _nodes, Told.Union(Varying));
    }

    /// <summary>The network with what nobody asks about put together.</summary>
    public Shortened Circuit { get; }

    /// <summary>Nodes whose potential is kept.</summary>
    public int[] Nodes => _nodes;

    /// <summary>Links whose current is kept or heats a filament.</summary>
    public int[] Told { get; }

    /// <summary>Places of the links whose curve a state decides.</summary>
    public int[] Varying { get; }

    /// <summary>Places of the links whose curve a state of that wiring decides.</summary>
    public static int[] VaryingOf(Wiring wiring) =>
        [.. Enumerable.Range(0, wiring.Links.Length).Where(l => wiring.Links[l] is { Switching: not null } or { Fuse: not null } or { Cold: not null })];

    /// <summary>How many electrical configurations were solved.</summary>
    public int Count => _pictures.Count;

    /// <summary>Every path from an output's terminal back into its box's supply, by place: what conducts there feeds the box from behind.</summary>
    public static IEnumerable<(int Box, int Output, int Link)> BackFeeding(Wiring wiring) =>
        from b in Enumerable.Range(0, wiring.Boxes.Length)
        let box = wiring.Boxes[b]
        from o in Enumerable.Range(0, box.OutputNodes.Length)
        from l in Enumerable.Range(0, wiring.Links.Length)
        where !wiring.Links[l].IsWire && wiring.Links[l].From == box.OutputNodes[o] && wiring.Links[l].To == box.SupplyNode
        select (b, o, l);

    /// <summary>The picture of a configuration; false when it was never asked for. Null: the network found no answer.</summary>
    public bool TryFind(ReadOnlySpan<ulong> configuration, out Narrow? picture) => _byKey.TryGetValue(configuration, out picture);

    /// <summary>Keeps what was solved; null when the network found no answer.</summary>
    public Narrow? Keep(ReadOnlySpan<ulong> configuration, Electrics? solved) =>
        _pictures.GetOrAdd(configuration.ToArray(), solved is null ? null : new Narrow(this, solved));

    /// <summary>A box's next state, worked out once. Known again by the very instance of its state: use <see cref="Same"/>.</summary>
    public BoxState Step(int box, BoxState before, Row<bool> inputs, Func<BoxState, Row<bool>, BoxState> step) =>
        _steps[box].TryGetValue((before, inputs), out var after) ? after : _steps[box].GetOrAdd((before, inputs), Same(step(before, inputs)));

    /// <summary>The one instance kept for all equal states.</summary>
    public BoxState Same(BoxState state) => _boxStates.GetOrAdd(state, state);

    /// <summary>A picture of the watched places alone.</summary>
    internal sealed class Narrow
    {
        private readonly Solved _places;
        private readonly double[] _volts;
        private readonly double[] _amps;
        private readonly double[] _squareVolts;
        private readonly double _residualAmps;

        public Narrow(Solved places, Electrics solved)
        {
            _places = places;
            _volts = [.. places._nodes.Select(n => solved.Volts[n])];
            _amps = [.. places._links.Select(l => solved.Amps[l])];
            _squareVolts = [.. places._links.Select(l => solved.SquareVolts[l])];
            _residualAmps = solved.ResidualAmps;
        }

        /// <summary>Shows it as if it had just been solved.</summary>
        public void LayOut(Electrics electrics)
        {
            for (var n = 0; n < _volts.Length; n++)
            {
                electrics.Volts[_places._nodes[n]] = _volts[n];
            }

            for (var l = 0; l < _amps.Length; l++)
            {
                electrics.Amps[_places._links[l]] = _amps[l];
                electrics.SquareVolts[_places._links[l]] = _squareVolts[l];
            }

            electrics.ResidualAmps = _residualAmps;
        }
    }

    private sealed class SameBefore : IEqualityComparer<(BoxState Before, Row<bool> Inputs)>
    {
        public bool Equals((BoxState Before, Row<bool> Inputs) x, (BoxState Before, Row<bool> Inputs) y) => ReferenceEquals(x.Before, y.Before) && x.Inputs == y.Inputs;

        public int GetHashCode((BoxState Before, Row<bool> Inputs) obj) => HashCode.Combine(RuntimeHelpers.GetHashCode(obj.Before), obj.Inputs);
    }

    /// <summary>Two configurations are one when all their words are.</summary>
    internal sealed class SameWords : IEqualityComparer<ulong[]>, IAlternateEqualityComparer<ReadOnlySpan<ulong>, ulong[]>
    {
        public bool Equals(ulong[]? x, ulong[]? y) => x.AsSpan().SequenceEqual(y);

        public bool Equals(ReadOnlySpan<ulong> alternate, ulong[] other) => alternate.SequenceEqual(other);

        public int GetHashCode(ulong[] obj) => GetHashCode(obj.AsSpan());

        public int GetHashCode(ReadOnlySpan<ulong> alternate)
        {
            var hash = default(HashCode);
            foreach (var word in alternate)
            {
                hash.Add(word);
            }

            return hash.ToHashCode();
        }

        public ulong[] Create(ReadOnlySpan<ulong> alternate) => alternate.ToArray();
    }
}
