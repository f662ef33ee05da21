using System.Collections.Immutable;
using System.Globalization;
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
    // Far below what any input, lamp or meter notices, far above rounding.
    private const double NothingAmps = 1e-7;

    // Two changes at once can help each other.
    private const double CarefulShare = 0.5;

    private static readonly ConditionalWeakTable<Wiring, HashSet<int>> Data = [];

    private readonly ImmutableArray<(Link? Before, Link? After)> _changes;
    private readonly bool _always;

    /// <param name="healthy">The wiring without it.</param>
    /// <param name="fault">The fault.</param>
    /// <param name="isWhole">Whether it is to be simulated to the end everywhere, whether it can matter or not.</param>
    public Touch(Wiring healthy, Fault fault, bool isWhole = false)
    {
        (Fault, IsWhole) = (fault, isWhole);
        Wiring = healthy.With(fault);
        _always = fault is Fault.Setting || Wiring.NodeCount != healthy.NodeCount || !Wiring.Boxes.SequenceEqual(healthy.Boxes);
        _changes = Changes(healthy.Links, Wiring.Links);
        Exists = _always || !_changes.IsEmpty;
        _always |= isWhole;

        // What is said over a data lead is heard or not, whatever flows.
        var data = Data.GetValue(healthy, static w => DataNodes(w));
        _always |= data.Count > 0 && _changes.Any(c => new[] { c.Before, c.After }.Any(l => l is not null && (data.Contains(l.From) || data.Contains(l.To))));
    }

    public Fault Fault { get; }

    /// <summary>Whether no shortcut is taken anywhere.</summary>
    public bool IsWhole { get; }

    /// <summary>The wiring with the fault in it.</summary>
    public Wiring Wiring { get; }

    /// <summary>Whether it changes this wiring at all: what it names is connected.</summary>
    public bool Exists { get; }

    /// <summary>Whether anything differs from a healthy moment that has come to rest.</summary>
    public bool Matters(Settled healthy) => _always || healthy.Pictures.IsEmpty
        || healthy.Pictures.Select((p, i) => Matters(healthy.State, p, between: i > 0)).Any(m => m);

    /// <summary>Whether anything differs while a meter reads volts, which draws a little itself.</summary>
    public bool Matters(State state, Picture metered) => _always || Matters(state, metered, between: false);

    /// <summary>Whether an ohmmeter's current can change by as much: what a link more or less can do is at most what it carries or would.</summary>
    public bool Matters(State off, Picture flows, double byAmps) => _always || Changes(off, flows, between: false).Sum(c => c) > byAmps * CarefulShare;

    /// <summary>The same for all faults that come to one circuit; null where that cannot be told from links.</summary>
    public string? Circuit => _always || Fault is Fault.Reversed ? null : string.Join(';', _changes.Select(c => $"{Told(c.Before)}>{Told(c.After)}"));

    private static ImmutableArray<(Link? Before, Link? After)> Changes(ImmutableArray<Link> healthy, ImmutableArray<Link> links)
    {
        var changes = ImmutableArray.CreateBuilder<(Link?, Link?)>();
        for (var l = 0; l < Math.Max(healthy.Length, links.Length); l++)
        {
            var before = l < healthy.Length ? healthy[l] : null;
            var after = l < links.Length ? links[l] : null;
            if (!ReferenceEquals(before, after))
            {
                changes.Add((before, after));
            }
        }

        return changes.ToImmutable();
    }

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

    private bool Matters(State state, Picture picture, bool between) => Changes(state, picture, between).Any(c => c > NothingAmps);

    // What each link carried and carries no more, would carry and did not, or carries otherwise.
    private IEnumerable<double> Changes(State state, Picture picture, bool between)
    {
        foreach (var (before, after) in _changes)
        {
            var (was, becomes) = (Amps(before), Amps(after));
            var isSamePlace = before is not null && after is not null && before.From == after.From && before.To == after.To;
            yield return isSamePlace ? Math.Abs(was - becomes) : Math.Max(Math.Abs(was), Math.Abs(becomes));
        }

        double Amps(Link? link) => link is null ? 0 : (Electrics.Shut(link, state, between) ?? link.Curve).At(picture.Across(link)).Amps;
    }

    // A link that is straight through nothing may be turned.
    private static string Told(Link? link) => link is null ? "" : link.Curve is Ohms && link.From > link.To
        ? string.Create(CultureInfo.InvariantCulture, $"{link.To}-{link.From} {link.Curve} {link.Off} {link.Switching} {link.Cold} {link.Fuse}")
        : string.Create(CultureInfo.InvariantCulture, $"{link.From}-{link.To} {link.Curve} {link.Off} {link.Switching} {link.Cold} {link.Fuse}");
}
