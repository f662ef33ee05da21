using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Loomwright.Faults;
using Loomwright.Parts;
using Loomwright.Simulation;

namespace Loomwright.Proof;

/// <summary>
/// A fault as what it changes in a wiring, and whether that changes anything in a picture of the healthy wiring: a link
/// that carries nothing can go, one that would carry nothing can come, and every potential stays as it is.
/// </summary>
internal sealed class Touch
{
    // Far below what any input, lamp or meter notices, far above rounding; on ohms no more than 25 MΩ would let through.
    private const double NothingAmps = 1e-7;
    private const double NothingForAMeterAmps = 2e-8;

    private static readonly ConditionalWeakTable<Wiring, HashSet<int>> Data = [];

    private readonly ImmutableArray<(Link? Before, Link? After)> _changes;
    private readonly bool _always;

    public Touch(Wiring healthy, Fault fault)
    {
        Fault = fault;
        Wiring = healthy.With(fault);
        _always = fault is Fault.Setting || Wiring.NodeCount != healthy.NodeCount || !Wiring.Boxes.SequenceEqual(healthy.Boxes);
        _changes =
        [
            .. from l in Enumerable.Range(0, Math.Max(healthy.Links.Length, Wiring.Links.Length))
               let before = l < healthy.Links.Length ? healthy.Links[l] : null
               let after = l < Wiring.Links.Length ? Wiring.Links[l] : null
               where !ReferenceEquals(before, after)
               select (before, after),
        ];
        Exists = _always || !_changes.IsEmpty;

        // What is said over a data lead is heard or not, whatever flows.
        var data = Data.GetValue(healthy, static w => DataNodes(w));
        _always |= data.Count > 0 && _changes.Any(c => new[] { c.Before, c.After }.Any(l => l is not null && (data.Contains(l.From) || data.Contains(l.To))));
    }

    public Fault Fault { get; }

    /// <summary>The wiring with the fault in it.</summary>
    public Wiring Wiring { get; }

    /// <summary>Whether it changes this wiring at all: what it names is connected.</summary>
    public bool Exists { get; }

    /// <summary>Whether anything differs from a healthy moment that has come to rest.</summary>
    public bool Matters(Settled healthy) => _always || healthy.Pictures.IsEmpty
        || healthy.Pictures.Select((p, i) => Matters(healthy.State, p, between: i > 0, NothingAmps)).Any(m => m);

    /// <summary>Whether an ohmmeter can show anything else.</summary>
    public bool Matters(State off, Picture flows) => _always || Matters(off, flows, between: false, NothingForAMeterAmps);

    private static HashSet<int> DataNodes(Wiring wiring)
    {
        HashSet<int> nodes = [.. wiring.Boxes.SelectMany(b => new[] { b.Data.First, b.Data.Second }).Concat(wiring.Blocks.SelectMany(b => new[] { b.Data, b.Second })).Where(n => n >= 0)];
        for (var grows = nodes.Count > 0; grows;)
        {
            var before = nodes.Count;
            foreach (var link in wiring.Links.Where(l => l is { Curve: Ohms, Switching: null, Fuse: null } && (l.IsWire || nodes.Contains(l.From) && nodes.Contains(l.To)) && (nodes.Contains(l.From) || nodes.Contains(l.To))))
            {
                nodes.Add(link.From);
                nodes.Add(link.To);
            }

            grows = nodes.Count > before;
        }

        return nodes;
    }

    private bool Matters(State state, Picture picture, bool between, double nothing)
    {
        foreach (var (before, after) in _changes)
        {
            var (was, becomes) = (Amps(before), Amps(after));
            var isSamePlace = before is not null && after is not null && before.From == after.From && before.To == after.To;
            if (isSamePlace ? Math.Abs(was - becomes) > nothing : Math.Abs(was) > nothing || Math.Abs(becomes) > nothing)
            {
                return true;
            }
        }

        return false;

        double Amps(Link? link) => link is null ? 0 : (Electrics.Shut(link, state, between) ?? link.Curve).At(picture.Across(link)).Amps;
    }
}
