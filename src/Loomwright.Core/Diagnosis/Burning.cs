using System.Collections.Concurrent;
using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Dictionary;
using Loomwright.Faults;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Sizing;
using Loomwright.Text;

namespace Loomwright.Diagnosis;

/// <summary>
/// Whether a fuse would blow or something burn or break where the bike with nothing wrong has none of it. Simulated where the
/// table's volts do not show that every wire carries well below what it stands.
/// </summary>
internal sealed class Burning
{
    // The table's volts are a meter's: this much of what a wire stands, or of a short, is near enough to be simulated.
    private const double Near = 0.9;

    private readonly Loom _loom;
    private readonly FaultTable _table;
    private readonly ImmutableArray<Look> _healthy;
    private readonly double _leastAmps;
    private readonly ImmutableArray<Conductor> _wires;
    private readonly ImmutableArray<(int Plus, int Minus)> _boxes;
    private readonly Dictionary<TerminalRef, int> _points;
    private readonly HashSet<string> _isBox;
    private readonly int[]?[] _onTheWay;
    private readonly bool[] _starts;
    private readonly int[] _fuses;
    private readonly Lazy<HashSet<string>>[] _anyway;
    private readonly ConcurrentDictionary<(Fault One, Fault? Other, int Stimulus), bool> _known = new();

    /// <param name="loom">The bike as designed.</param>
    /// <param name="table">Made of it; its points take in every wire's ends.</param>
    public Burning(Loom loom, FaultTable table)
    {
        (_loom, _table, _healthy) = (loom, table, table.Healthy.Looks);
        _fuses = [.. Enumerable.Range(0, table.Observables.Length).Where(o => table.Observables[o].Sense == Sense.Fuse)];
        _leastAmps = Harm.LeastAmps(loom);
        _points = table.Points.Select((p, i) => (p, i)).ToDictionary(p => p.p, p => p.i);
        var wiring = Wiring.Of(loom);
        _wires =
        [
            .. from wire in loom.Wires.Select((w, i) => (w.From, w.To, Ohms: ((Ohms)wiring.Links[i].Curve).ResistanceOhms, Limit: WireLimit.Of(loom, w)))
               select new Conductor(Point(wire.From), Point(wire.To), wire.Ohms * wire.Limit.ForLongAmps, wire.Ohms * wire.Limit.StartingAmps),
        ];
        _boxes = [.. from part in wiring.Parts where part.Model.Controller is not null select (Point(new(part.Name, part.Model.Controller!.Supply)), Point(new(part.Name, part.Model.Controller!.Ground)))];
        _isBox = wiring.Parts.Where(p => p.Model.Controller is not null).Select(p => p.Name).ToHashSet(Names.Comparer);
        _onTheWay = [.. Enumerable.Range(0, table.Stimuli.Length).Select(OnTheWay)];
        var starters = Enumerable.Range(0, table.Observables.Length).Where(o => Names.Same(loom.Part(table.Observables[o].Part)?.Kind ?? "", "starter")).ToList();
        _starts = [.. table.Stimuli.Select((_, s) => (_onTheWay[s] ?? [s]).Any(t => starters.Any(o => !_healthy[t].Signs.IsEmpty && (Symbol)_healthy[t].Signs[o] == Symbol.Turns)))];
        _anyway = [.. table.Stimuli.Select((_, s) => new Lazy<HashSet<string>>(() => [.. Burnt(loom, s)]))];
    }

    // The volts along a wire at which it carries what it stands for long, and for the time of a start.
    private readonly record struct Conductor(int From, int To, double ForLongVolts, double StartingVolts);

    /// <summary>Whether it would after a stimulus, by its place, or on the way to it. A fault that is not felt there has the healthy look itself.</summary>
    public bool Harms(Hypothesis hypothesis, int stimulus) => !hypothesis.Faults.IsEmpty && (_onTheWay[stimulus] ?? [stimulus]).Any(s => !ReferenceEquals(hypothesis.Looks[s], _healthy[s]))
        && (Blows(hypothesis, stimulus) || (MayBurn(hypothesis, stimulus) && _known.GetOrAdd((hypothesis.Faults[0].Fault, hypothesis.Repairs.Length > 1 ? hypothesis.Faults[1].Fault : null, stimulus), _ => Burns(hypothesis, stimulus))));

    /// <summary>Whether a fuse that the bike with nothing wrong leaves whole would be blown after a stimulus, by its place.</summary>
    public bool Blows(Hypothesis hypothesis, int stimulus) => hypothesis.Looks[stimulus] is var look && _healthy[stimulus] is var healthy && !ReferenceEquals(look, healthy)
        && (look.Signs.IsEmpty || Array.Exists(_fuses, o => look.Signs[o] != healthy.Signs[o] && (FuseState)look.Signs[o] != FuseState.Whole));

    /// <summary>Whether it could be what made something hot there: what harms, but for a fuse that is too small, which carries no more than it should.</summary>
    public bool Heats(Hypothesis hypothesis, int stimulus) => Harms(hypothesis, stimulus) && !Wrong(hypothesis).All(IsSmallerFuse);

    private bool IsSmallerFuse(Fault fault) => fault is Fault.Setting setting && _loom.Part(setting.Part) is { Kind: "fuse" } fuse
        && OtherSetting.In(fuse, setting.Key, setting.Value)?.Settings.Number("rating") < fuse.Settings.Number("rating");

    private static IEnumerable<Fault> Wrong(Hypothesis hypothesis) => hypothesis.Faults.Take(hypothesis.Repairs.Length).Select(f => f.Fault);

    // Where something on the way is not in the table, it may.
    private bool MayBurn(Hypothesis hypothesis, int stimulus) => _onTheWay[stimulus] is not { } onTheWay
        || Wrong(hypothesis).Any(f => f is Fault.Reversed reversed && _isBox.Contains(reversed.Part))
        || onTheWay.Any(s => !ReferenceEquals(hypothesis.Looks[s], _healthy[s]) && MayBurn(hypothesis, hypothesis.Looks[s], _healthy[s], _starts[stimulus]));

    private bool MayBurn(Hypothesis hypothesis, Look look, Look healthy, bool starts)
    {
        if (look.Volts.IsEmpty || _boxes.Any(b => b.Plus < 0 || b.Minus < 0 || look.Volts[b.Plus] - look.Volts[b.Minus] < Near * Harm.ReversedBelowVolts))
        {
            return true;
        }

        if (Math.Abs(look.SupplyAmps) <= _leastAmps)
        {
            return false;
        }

        return Wrong(hypothesis).OfType<Fault.Shorted>().Any(f => (Point(f.A), Point(f.B)) is var (a, b) && (a < 0 || b < 0 || Math.Abs(look.Volts[a] - look.Volts[b]) > Near * Harm.ShortAboveAmps * Patch.TouchOhms))
            || Overloads(Carrying(hypothesis), look, healthy, starts);
    }

    private bool Overloads(ImmutableArray<Conductor> wires, Look look, Look healthy, bool starts)
    {
        for (var w = 0; w < wires.Length; w++)
        {
            if (wires[w].From < 0 || wires[w].To < 0 || (TooMuch(wires[w], look, starts, Near) && !TooMuch(_wires[w], healthy, starts, 1)))
            {
                return true;
            }
        }

        return false;
    }

    private static bool TooMuch(Conductor wire, Look look, bool starts, double share) =>
        Math.Abs(look.Volts[wire.From] - look.Volts[wire.To]) > share * (starts ? wire.StartingVolts : wire.ForLongVolts);

    // A wire that sits elsewhere has its volts there.
    private ImmutableArray<Conductor> Carrying(Hypothesis hypothesis) => Wrong(hypothesis).Any(f => f is Fault.Moved or Fault.Swapped)
        ? [.. Patched(hypothesis).Wires.Select((w, i) => _wires[i] with { From = Point(w.From), To = Point(w.To) })]
        : _wires;

    private Loom Patched(Hypothesis hypothesis) => Wrong(hypothesis).Aggregate(_loom, Patch.Apply);

    private int Point(TerminalRef terminal) => _points.GetValueOrDefault(terminal, -1);

    // The stimuli that are its beginnings, itself too; null when one of them is not in the table.
    private int[]? OnTheWay(int stimulus)
    {
        var operations = _table.Stimuli[stimulus].Operations;
        var beginnings = Enumerable.Range(0, operations.Length + 1).Select(n => _table.Stimuli.FirstOrDefault(s => s.Operations.AsSpan().SequenceEqual(operations.AsSpan()[..n]))).ToList();
        return beginnings.Contains(null) ? null : [.. beginnings.Select(b => _table.Stimuli.IndexOf(b!))];
    }

    private bool Burns(Hypothesis hypothesis, int stimulus) => Burnt(Patched(hypothesis), stimulus).Any(w => !_anyway[stimulus].Value.Contains(w));

    private IEnumerable<string> Burnt(Loom loom, int stimulus) =>
        new Rig(loom, new RigOptions { Healthy = _loom }).Play(_table.Stimuli[stimulus].Operations).SelectMany(f => Harm.Found(loom, f, _starts[stimulus])).Select(h => h.What);
}
