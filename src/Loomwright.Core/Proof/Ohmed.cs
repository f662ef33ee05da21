using System.Collections.Concurrent;
using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Proof;

/// <summary>Everything a stage measures before power, read without a fault once, and with one where it can matter.</summary>
internal sealed class Ohmed
{
    // Of a hand meter on ohms, with what is left of its leads (judgement; common sheets say 0.8 % to 1.5 % and some digits).
    private const double ToleranceShare = 0.02;
    private const double ToleranceOhms = 0.2;

    private readonly Loom _connected;
    private readonly Paths _paths;
    private readonly FeedSide _sides;
    private readonly bool _isWhole;
    private readonly ConcurrentDictionary<string, Wiring> _bare = new(Names.Comparer);
    private readonly ImmutableArray<Reading> _readings;

    public Ohmed(Stage stage, bool isWhole)
    {
        _isWhole = isWhole;
        _connected = stage.Connected;
        _paths = new Paths(stage.Connected);
        _sides = new FeedSide(_paths);
        Plugged = Wiring.Of(stage.Connected);
        Low = [.. stage.Steps.SelectMany(s => s.Unplugged).Distinct(Names.Comparer).Where(p => !Fetching.IsFuse(stage.Connected.Part(p)!))];
        var readings = ImmutableArray.CreateBuilder<Reading>();
        var positions = ImmutableDictionary<string, string>.Empty.WithComparers(Names.Comparer);
        foreach (var step in stage.Steps.Where(s => s.Act == Act.Measure))
        {
            positions = step.Do is { } set ? positions.SetItem(set.Control, set.Position) : positions;
            if (step.Meter is { } meter && step.Expect is [{ Band: { } band }])
            {
                readings.Add(Read(step.Id, meter.RedTip.Terminal, meter.BlackTip.Terminal, step.Unplugged, positions, band));
            }
        }

        _readings = readings.ToImmutable();
    }

    /// <summary>The wiring with every plug on and every fuse in.</summary>
    public Wiring Plugged { get; }

    /// <summary>What is unplugged because it reads as low as a short.</summary>
    public ImmutableArray<string> Low { get; }

    /// <summary>The measurements that read outside their bands with the fault, whatever the meter's tolerance makes of it; those of some steps alone.</summary>
    public IEnumerable<Caught> Catching(Fault fault, Func<string, bool> isOf)
    {
        var touched = new Touched(fault, _isWhole);
        return _readings.Where(r => isOf(r.Id)).Select(r => Catches(r, touched)).OfType<Caught>();
    }

    /// <summary>Whether a step makes this measurement already.</summary>
    public bool Makes(Reading reading) => _readings.Any(r => r.IsLike(reading));

    /// <summary>A measurement that no step makes yet; null when a terminal is not there.</summary>
    public Reading? Try(TerminalRef red, TerminalRef black, ImmutableArray<string> off, ImmutableDictionary<string, string> positions)
    {
        var wiring = With(off);
        return wiring.NodeOf(red) is { } a && wiring.NodeOf(black) is { } b && a != b && Read("", red, black, off, positions, null) is { Test.Flows: not null } reading ? reading : null;
    }

    /// <summary>Whether a measurement reads outside its band with the fault.</summary>
    public static Caught? Catches(Reading reading, Touched touched)
    {
        var touch = touched.In(reading.Wiring);
        if (!touch.Exists || (reading.Test.Flows is { } flows && !touch.Matters(reading.PowerOff, flows, reading.LeavesByAmps)))
        {
            return null;
        }

        var ohms = Meter.Test(touch.Wiring, reading.PowerOff, Tip(touch, reading.Red), Tip(touch, reading.Black))?.Ohms?.Ohms ?? double.PositiveInfinity;
        var least = reading.Band.Least is { } l ? l / ((ohms * (1 + ToleranceShare)) + ToleranceOhms) : 0;
        var most = reading.Band.Most is { } m ? ((ohms * (1 - ToleranceShare)) - ToleranceOhms) / m : 0;
        return Math.Max(least, most) is > 1 and var margin ? new Caught(reading.Id, ohms, margin) : null;
    }

    private Wiring With(ImmutableArray<string> off) =>
        off.IsEmpty ? Plugged : _bare.GetOrAdd(string.Join('\n', off), _ => Wiring.Of(Unplugged.Of(_connected, _paths, off)));

    private Reading Read(string id, TerminalRef red, TerminalRef black, ImmutableArray<string> off, ImmutableDictionary<string, string> positions, Band? band)
    {
        var wiring = With(off);
        var start = wiring.Start();
        var moved = positions;
        foreach (var (control, position) in positions)
        {
            var c = wiring.Controls.IndexOf(wiring.Controls.First(x => Names.Same(x.Name, control)));
            start = Time.Moved(start, c, Wiring.PlaceOf(wiring.Controls[c], position)!.Value);
            moved = Names.Same(wiring.Controls[c].Rest, position) ? moved.Remove(control) : moved;
        }

        var test = Meter.Test(wiring, start, red, black) ?? new OhmTest(null, null);
        return new Reading(id, red, black, off, moved, wiring, Meter.PowerOff(wiring, start), test, band ?? Bands.Of(test.Ohms, plain: false, _sides.IsAcross(red, black), Meter.IsThroughElectronics(wiring, start, red, black)));
    }

    // The tip goes to the mark on the case, and the case is what was turned round.
    private static TerminalRef Tip(Touch touch, TerminalRef at)
    {
        if (touch.Fault is not Fault.Reversed reversed || !Names.Same(reversed.Part, at.Part)
            || touch.Wiring.Parts.First(p => Names.Same(p.Name, at.Part)).Model is not { Polarity: { } poles } model || (model.Controller is null && model.Supply is null))
        {
            return at;
        }

        return Names.Same(at.Terminal, poles.Plus) ? at with { Terminal = poles.Minus } : Names.Same(at.Terminal, poles.Minus) ? at with { Terminal = poles.Plus } : at;
    }

    /// <summary>A fault in each wiring that is measured, put in when it is asked for.</summary>
    internal sealed class Touched(Fault fault, bool isWhole = false)
    {
        private readonly Dictionary<Wiring, Touch> _in = new(ReferenceEqualityComparer.Instance);

        public Fault Fault => fault;

        public Touch In(Wiring wiring) => _in.TryGetValue(wiring, out var touch) ? touch : _in[wiring] = new Touch(wiring, fault, isWhole);
    }

    /// <summary>One measurement without a fault.</summary>
    internal sealed record Reading(
        string Id, TerminalRef Red, TerminalRef Black, ImmutableArray<string> Off, ImmutableDictionary<string, string> Positions, Wiring Wiring, State PowerOff, OhmTest Test, Band Band)
    {
        /// <summary>Whether it is between the same points, in the same positions, with the same plugs off.</summary>
        public bool IsLike(Reading other) => Like == other.Like;

        /// <summary>The same for all that are.</summary>
        public string Like { get; } = string.Join('\n', new[] { Red.ToString(), Black.ToString() }.Order(StringComparer.Ordinal)
            .Concat(Off).Concat(Positions.Select(p => $"{p.Key} = {p.Value}").Order(StringComparer.Ordinal)));

        /// <summary>By how much the meter's own current must change before the reading leaves its band.</summary>
        public double LeavesByAmps { get; } = Math.Min(
            Band.Least is { } least ? Math.Max(0, Meter.TestAmps(least) - Meter.TestAmps(Test.Ohms?.Ohms)) : double.PositiveInfinity,
            Band.Most is { } most ? Math.Max(0, Meter.TestAmps(Test.Ohms?.Ohms) - Meter.TestAmps(most)) : double.PositiveInfinity);
    }

    /// <summary>A measurement that tells: what it reads with the fault, and by how many times that misses the band.</summary>
    internal sealed record Caught(string Step, double Ohms, double Margin);
}
