using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;

namespace Loomwright.Dictionary;

/// <summary>Looks at what one wiring settled to.</summary>
internal sealed class Viewer
{
    private readonly Wiring _wiring;
    private readonly Settler _settler;
    private readonly Watching _watching;
    private readonly int[] _points;
    private readonly double[] _ohms;

    // Above this a point floats to a meter of 10 MΩ (judgement: dirt and damp lead as much).
    private const double LooseOhms = 1e6;

    /// <param name="wiring">What is looked at.</param>
    /// <param name="settler">Solves once more where a point is held by little.</param>
    /// <param name="fullLight">Of the healthy loom.</param>
    /// <param name="points">Where the meter may be put.</param>
    public Viewer(Wiring wiring, Settler settler, FullLight fullLight, ImmutableArray<TerminalRef> points)
    {
        (_wiring, _settler) = (wiring, settler);
        _watching = new Watching(wiring, settler, fullLight);
        _points = [.. points.Select(p => wiring.NodeOf(p) ?? 0)];
        _ohms = new double[_points.Length];
    }

    /// <summary>Everything a person can tell there, in a fixed order.</summary>
    public static ImmutableArray<Observable> Observables(Wiring wiring) =>
    [
        .. wiring.Sights.Select(s => new Observable(Sense.Sight, s.Name, s.Part) { LightPower = s.Sight is Sight.Lamp lamp ? Light.Power(lamp.Law, wiring.Links[s.Link].Curve) : null }),
        .. wiring.Boxes.SelectMany(b => b.Lights.Select(l => new Observable(Sense.BoxLight, $"{b.Part}.{l.Terminal}", b.Part))),
        .. wiring.Relays.Where(r => r.Facts.Clicks).Select(r => new Observable(Sense.Relay, r.Part, r.Part)),
        .. wiring.Fuses.Select(f => new Observable(Sense.Fuse, f.Part, f.Part)),
    ];

    public Look Of(Settled settled)
    {
        if (settled.Pictures.IsEmpty)
        {
            return new Look(settled.Outcome, [], 0, []);
        }

        var on = settled.Pictures[0];
        return new Look(settled.Outcome, Signs(settled), _wiring.Supplies.Sum(s => -on.Amps[s]), Volts(settled.State, on))
        {
            Floats = Array.Exists(_ohms, o => o > LooseOhms) ? [.. _ohms.Select(o => o > LooseOhms)] : [],
            Light = [.. _wiring.Sights.Select(s => (float)_watching.Light(s, settled.Pictures))],
        };
    }

    /// <summary>The signs alone.</summary>
    public ImmutableArray<byte> Signs(Settled settled)
    {
        var (state, pictures) = (settled.State, settled.Pictures);
        var signs = ImmutableArray.CreateBuilder<byte>();
        for (var s = 0; s < _wiring.Sights.Length; s++)
        {
            signs.Add((byte)_watching.Called(_wiring.Sights[s], pictures, settled.FlashesPerMinute.IsEmpty ? null : settled.FlashesPerMinute[s]));
        }

        for (var b = 0; b < _wiring.Boxes.Length; b++)
        {
            foreach (var light in _wiring.Boxes[b].Lights)
            {
                signs.Add((byte)Watching.Light(_wiring.Boxes[b], light, state.Boxes[b], pictures));
            }
        }

        for (var r = 0; r < _wiring.Relays.Length; r++)
        {
            if (_wiring.Relays[r].Facts.Clicks)
            {
                signs.Add((byte)(state.Relays[r] ? 1 : 0));
            }
        }

        for (var f = 0; f < _wiring.Fuses.Length; f++)
        {
            var fuse = _wiring.Fuses[f];
            signs.Add((byte)Watching.State(fuse, state.Blown[f], fuse.Cycle is { } c && state.Flashers[c], pictures[0].Amps[fuse.Link]));
        }

        return signs.ToImmutable();
    }

    // A meter is a branch: what holds a point lets its volts sink by the meter's share.
    private ImmutableArray<double> Volts(State state, Picture on)
    {
        Array.Clear(_ohms);
        if (_points.Length == 0 || !_settler.OhmsToReference(state, _points, _ohms))
        {
            return [.. _points.Select(n => on.Volts[n])];
        }

        return [.. _points.Select((n, p) => Meter.Shows(on.Volts[n], _ohms[p]))];
    }
}
