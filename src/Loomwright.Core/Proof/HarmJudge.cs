using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Sizing;
using Loomwright.Text;

namespace Loomwright.Proof;

/// <summary>What a moment with a fault harms that the same moment without it does not.</summary>
internal sealed class HarmJudge
{
    // A coil's diode and the one inside an output stand about an amp (judgement, no source).
    private const double DiodeAmps = 1;

    private readonly Wiring _healthy;
    private readonly ImmutableArray<(double ForLong, double Starting)> _mostAmps;
    private readonly ImmutableArray<int> _diodes;
    private readonly ImmutableArray<(int Sight, HarmKind Kind)> _unasked;
    private readonly ImmutableArray<(int Relay, bool IsForSeconds)> _coils;
    private readonly ImmutableArray<int> _engine;

    public HarmJudge(Wiring healthy, Loom whole)
    {
        _healthy = healthy;
        _mostAmps = [.. healthy.Links.Select(l => l.IsWire && whole.Wire(l.Owner) is { } wire && WireLimit.Of(whole, wire) is var limit ? (limit.ForLongAmps, limit.StartingAmps) : (double.PositiveInfinity, double.PositiveInfinity))];
        _diodes = [.. Enumerable.Range(0, healthy.Links.Length).Where(l => healthy.Links[l] is { IsWire: false, Curve: Diode } && !IsLamp(healthy.Links[l]))];
        var parts = whole.Parts.ToDictionary(p => p.Name, Names.Comparer);
        _unasked = [.. healthy.Sights.SelectMany((s, i) => Unasked(parts[s.Part], s).Select(k => (i, k)))];
        _coils = [.. healthy.Relays.Select((r, i) => (i, parts[r.Part].Kind is "starter relay" or "solenoid"))];
        _engine = [.. Enumerable.Range(0, healthy.Sights.Length).Where(s => RunsEngine(whole, healthy.Sights[s]))];
    }

    /// <summary>The kinds of harm; empty where there is none.</summary>
    public IEnumerable<HarmKind> Of(Touch touch, Settled without, Settled with, bool isStopAsked)
    {
        if (with.Pictures.IsEmpty || without.Pictures.IsEmpty)
        {
            yield break;
        }

        if (Overheats(without, with))
        {
            yield return HarmKind.Overheats;
        }

        if (Shorts(touch.Wiring, without, with))
        {
            yield return HarmKind.ShortsSupply;
        }

        if (PastRating(touch, without, with))
        {
            yield return HarmKind.PastRating;
        }

        foreach (var kind in _unasked.Where(u => !Runs(u.Sight, without) && Runs(u.Sight, with)).Select(u => u.Kind).Concat(CoilsFed(without, with)).Distinct())
        {
            yield return kind;
        }

        if (isStopAsked && _engine.Any(s => !Runs(s, without) && Runs(s, with)))
        {
            yield return HarmKind.EngineRunsOn;
        }
    }

    /// <summary>Whether the loom has what such harm needs.</summary>
    public bool CanShow(HarmKind kind) => kind switch
    {
        HarmKind.StarterTurns or HarmKind.PumpRuns => _unasked.Any(u => u.Kind == kind),
        HarmKind.CoilFed => _unasked.Any(u => u.Kind == kind) || _coils.Any(c => c.IsForSeconds),
        HarmKind.EngineRunsOn => !_engine.IsEmpty,
        _ => true,
    };

    // A start that is asked for takes seconds; one that is not goes on.
    private bool Overheats(Settled without, Settled with)
    {
        var isStart = _unasked.Any(u => u.Kind == HarmKind.StarterTurns && Runs(u.Sight, without));
        for (var l = 0; l < _mostAmps.Length; l++)
        {
            var most = isStart ? _mostAmps[l].Starting : _mostAmps[l].ForLong;
            var amps = double.IsPositiveInfinity(most) ? 0 : Math.Abs(Most(with, l));
            if (amps > most && amps > Math.Abs(Most(without, l)) * 1.1)
            {
                return true;
            }
        }

        return false;
    }

    private static bool Shorts(Wiring wiring, Settled without, Settled with) =>
        Enumerable.Range(0, wiring.Fuses.Length).Any(f => with.State.Blown[f] && !without.State.Blown[f])
        || Gives(wiring, with) > Gives(wiring, without) + Harm.ShortAboveAmps;

    private bool PastRating(Touch touch, Settled without, Settled with)
    {
        var wiring = touch.Wiring;
        var reversed = wiring.Boxes.Any(b => with.Pictures[0].Volts[b.SupplyNode] - with.Pictures[0].Volts[b.GroundNode] < Harm.ReversedBelowVolts);
        var diodes = _diodes.Any(d => d < wiring.Links.Length && Math.Abs(Most(with, d)) > DiodeAmps && Math.Abs(Most(without, d)) <= DiodeAmps);
        var fuses = wiring.Fuses.Select((f, i) => (f, i)).Any(f => !with.State.Blown[f.i] && Math.Abs(Most(with, f.f.Link)) > f.f.RatingAmps && Math.Abs(Most(without, f.f.Link)) <= f.f.RatingAmps);
        return reversed || diodes || fuses;
    }

    private IEnumerable<HarmKind> CoilsFed(Settled without, Settled with) =>
        _coils.Where(c => c.IsForSeconds && with.State.Relays[c.Relay] && !without.State.Relays[c.Relay]).Select(_ => HarmKind.CoilFed);

    private bool Runs(int sight, Settled settled)
    {
        var place = _healthy.Sights[sight];
        var amps = Math.Abs(Most(settled, place.Link));
        return place.Sight switch
        {
            Sight.Horn h => amps >= h.SoundsAboveAmps,
            Sight.Motor m => amps >= m.TurnsAboveAmps,
            Sight.Load l => amps >= l.WorksAboveAmps,
            _ => false,
        };
    }

    private static double Most(Settled settled, int link)
    {
        var most = 0.0;
        foreach (var picture in settled.Pictures)
        {
            most = Math.Abs(picture.Amps[link]) > Math.Abs(most) ? picture.Amps[link] : most;
        }

        return most;
    }

    private static double Gives(Wiring wiring, Settled settled) => settled.Pictures.Max(p => wiring.Supplies.Sum(s => Math.Max(0, -p.Amps[s])));

    private bool IsLamp(Link link) => _healthy.Sights.Any(s => ReferenceEquals(_healthy.Links[s.Link], link));

    private static IEnumerable<HarmKind> Unasked(Part part, SightPlace sight) =>
        Risky.IsStarter(part) ? [HarmKind.StarterTurns]
        : Risky.IsPump(part) ? [HarmKind.PumpRuns]
        : Risky.IsCoil(part) || sight.Sight is Sight.Horn ? [HarmKind.CoilFed]
        : [];

    // What the kill switch stops besides the starter and the pump.
    private static bool RunsEngine(Loom whole, SightPlace sight)
    {
        var part = whole.Part(sight.Part)!;
        var kills = whole.Parts.Where(p => p.Kind == "kill switch").Select(p => p.Name).ToHashSet(Names.Comparer);
        return sight.Sight is Sight.Load && (Risky.RunsEngine(part)
            || whole.Functions.Any(f => f.Shows.Any(s => Names.Same(s.What, sight.Name) || Names.Same(s.What, sight.Part)) && f.Works.NamesUsed().Any(kills.Contains)));
    }
}
