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

    private readonly Wiring _plugged;
    private readonly Wiring _unplugged;
    private readonly ImmutableArray<Reading> _readings;

    public Ohmed(Stage stage)
    {
        _plugged = Wiring.Of(stage.Connected);
        var off = stage.Steps.Select(s => s.Unplugged).FirstOrDefault(u => !u.IsEmpty, []);
        _unplugged = off.IsEmpty ? _plugged : Wiring.Of(Unplugged.Of(stage.Connected, new Paths(stage.Connected), off));
        var readings = ImmutableArray.CreateBuilder<Reading>();
        var positions = ImmutableDictionary<string, string>.Empty.WithComparers(Names.Comparer);
        foreach (var step in stage.Steps.Where(s => s.Act == Act.Measure))
        {
            positions = step.Do is { } set ? positions.SetItem(set.Control, set.Position) : positions;
            if (step.Meter is { } meter && step.Expect is [{ Band: { } band }])
            {
                readings.Add(Read(step.Id, meter.RedTip.Terminal, meter.BlackTip.Terminal, !step.Unplugged.IsEmpty, positions, band));
            }
        }

        _readings = readings.ToImmutable();
    }

    /// <summary>A fault in the wiring as it is with all plugs on, and with those off that hide a short.</summary>
    public (Touch Plugged, Touch Unplugged) Of(Fault fault) => new Touch(_plugged, fault) is var on && ReferenceEquals(_plugged, _unplugged) ? (on, on) : (on, new Touch(_unplugged, fault));

    /// <summary>The measurements that read outside their bands with the fault, whatever the meter's tolerance makes of it.</summary>
    public IEnumerable<Caught> Catching((Touch Plugged, Touch Unplugged) fault) => _readings.Select(r => Catches(r, fault)).OfType<Caught>();

    /// <summary>A measurement that no step makes yet; null when a terminal is not there.</summary>
    public Reading? Try(TerminalRef red, TerminalRef black, bool unplugged, ImmutableDictionary<string, string> positions)
    {
        var wiring = unplugged ? _unplugged : _plugged;
        return wiring.NodeOf(red) is { } a && wiring.NodeOf(black) is { } b && a != b && Read("", red, black, unplugged, positions, null) is { Test.Flows: not null } reading ? reading : null;
    }

    /// <summary>Whether a measurement reads outside its band with the fault.</summary>
    public static Caught? Catches(Reading reading, (Touch Plugged, Touch Unplugged) fault)
    {
        var touch = reading.IsUnplugged ? fault.Unplugged : fault.Plugged;
        if (!touch.Exists || (reading.Test.Flows is { } flows && !touch.Matters(reading.Off, flows, reading.LeavesByAmps)))
        {
            return null;
        }

        var ohms = Meter.Test(touch.Wiring, reading.Off, Tip(touch, reading.Red), Tip(touch, reading.Black))?.Ohms?.Ohms ?? double.PositiveInfinity;
        var least = reading.Band.Least is { } l ? l / ((ohms * (1 + ToleranceShare)) + ToleranceOhms) : 0;
        var most = reading.Band.Most is { } m ? ((ohms * (1 - ToleranceShare)) - ToleranceOhms) / m : 0;
        return Math.Max(least, most) is > 1 and var margin ? new Caught(reading.Id, ohms, margin) : null;
    }

    private Reading Read(string id, TerminalRef red, TerminalRef black, bool unplugged, ImmutableDictionary<string, string> positions, Band? band)
    {
        var wiring = unplugged ? _unplugged : _plugged;
        var start = wiring.Start();
        foreach (var (control, position) in positions)
        {
            var c = wiring.Controls.IndexOf(wiring.Controls.First(x => Names.Same(x.Name, control)));
            start = Time.Moved(start, c, Wiring.PlaceOf(wiring.Controls[c], position)!.Value);
        }

        var test = Meter.Test(wiring, start, red, black) ?? new OhmTest(null, null);
        return new Reading(id, red, black, unplugged, positions, Meter.PowerOff(wiring, start), test, band ?? Bands.Of(test.Ohms, plain: false));
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

    /// <summary>One measurement without a fault.</summary>
    internal sealed record Reading(string Id, TerminalRef Red, TerminalRef Black, bool IsUnplugged, ImmutableDictionary<string, string> Positions, State Off, OhmTest Test, Band Band)
    {
        /// <summary>By how much the meter's own current must change before the reading leaves its band.</summary>
        public double LeavesByAmps { get; } = Math.Min(
            Band.Least is { } least ? Math.Max(0, Meter.TestAmps(least) - Meter.TestAmps(Test.Ohms?.Ohms)) : double.PositiveInfinity,
            Band.Most is { } most ? Math.Max(0, Meter.TestAmps(Test.Ohms?.Ohms) - Meter.TestAmps(most)) : double.PositiveInfinity);
    }

    /// <summary>A measurement that tells: what it reads with the fault, and by how many times that misses the band.</summary>
    internal sealed record Caught(string Step, double Ohms, double Margin);
}
