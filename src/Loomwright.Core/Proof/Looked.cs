using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Proof;

/// <summary>What a person sees and reads at the powered steps of a stage, and which of them tell a fault.</summary>
internal sealed class Looked
{
    private readonly FullLight _fullLight;
    private readonly ImmutableArray<Frame> _healthy;
    private readonly bool _readsAmps;
    private readonly bool _isLitByVolts;

    public Looked(Stage stage)
    {
        Played = new Played(stage.Connected, stage.Steps);
        _fullLight = FullLight.Of(stage.Connected);
        var watching = new Watching(Played.Wiring, new Settler(Played.Wiring), _fullLight);
        _healthy = [.. Played.Healthy.Select(watching.Glance)];
        _isLitByVolts = Played.Wiring.Boxes.Any(b => b.Lights.Any(l => l.Means is LightMeans.Voltage or LightMeans.LoadCurrent));
        _readsAmps = stage.Steps.Any(s => s.Meter?.Dial == Dial.Amps) || Played.Wiring.Parts.Any(p => p.Model.Supply is { LimitAmps: not null });
    }

    public Played Played { get; }

    /// <summary>The steps of a moment that show something else with the fault, in order, each with whether it takes a meter.</summary>
    /// <param name="touch">The fault.</param>
    /// <param name="moment">The moment.</param>
    /// <param name="with">How it settled with the fault.</param>
    /// <param name="settler">What settled it.</param>
    /// <param name="isOld">Whether what is done once more was done with the fault before.</param>
    public IEnumerable<(string Step, bool IsRead)> Telling(Touch touch, int moment, Settled with, Settler settler, bool isOld)
    {
        var looksOther = (touch.IsWhole || !FlowsSame(Played.Healthy[moment], with)) && !LooksSame(_healthy[moment], new Watching(touch.Wiring, settler, _fullLight).Glance(with));
        for (var s = 0; s < Played.Steps.Length; s++)
        {
            var step = Played.Steps[s];
            if (Played.MomentOf(s) != moment || step.Expect.IsEmpty || (isOld && step.Act == Act.Again))
            {
                continue;
            }

            if (step.Meter is { Dial: Dial.Volts } card)
            {
                if (ReadsOther(card, step, touch.Wiring, with))
                {
                    yield return (step.Id, true);
                }
            }
            else if (looksOther || AmpsOutside(step, touch.Wiring, with))
            {
                yield return (step.Id, !looksOther);
            }
        }
    }

    private static bool LooksSame(Frame a, Frame b) =>
        a.Outcome == b.Outcome
        && a.Seen.Length == b.Seen.Length && a.Seen.Zip(b.Seen).All(p => p.First.Symbol == p.Second.Symbol)
        && a.Controllers.Zip(b.Controllers).All(p => p.First.Lights.IsEmpty ? p.First.Awake == p.Second.Awake : p.First.Lights.SequenceEqual(p.Second.Lights))
        && a.Fuses.Zip(b.Fuses).All(p => p.First.State == FuseState.Blown == (p.Second.State == FuseState.Blown));

    private bool AmpsOutside(Step step, Wiring wiring, Settled with) => _readsAmps && step.Expect.FirstOrDefault(e => e.Band is { Unit: Unit.Amp })?.Band is { } band
        && with.Pictures.Any(p => IsOutside(band, wiring.Supplies.Sum(s => -p.Amps[s])));

    private static bool ReadsOther(MeterCard card, Step step, Wiring wiring, Settled with) =>
        step.Expect.FirstOrDefault(e => e.Band is { Unit: Unit.Volt })?.Band is { } band
        && Meter.Volts(wiring, with.State, card.RedTip.Terminal, card.BlackTip.Terminal) is var volts && (volts is null || IsOutside(band, volts.Value.Volts));

    // Everything that can be seen carries what it did: no eye tells a thousandth.
    private bool FlowsSame(Settled without, Settled with)
    {
        if (_isLitByVolts || with.Outcome != without.Outcome || with.State != without.State || with.Pictures.Length != without.Pictures.Length || !with.FlashesPerMinute.SequenceEqual(without.FlashesPerMinute))
        {
            return false;
        }

        for (var p = 0; p < with.Pictures.Length; p++)
        {
            foreach (var sight in Played.Wiring.Sights)
            {
                if (!IsSame(without.Pictures[p].Amps[sight.Link], with.Pictures[p].Amps[sight.Link]) || !IsSame(without.Pictures[p].SquareVolts[sight.Link], with.Pictures[p].SquareVolts[sight.Link]))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static bool IsSame(double a, double b) => Math.Abs(a - b) <= (Math.Abs(a) * 1e-3) + 1e-6;

    private static bool IsOutside(Band band, double value) => value < band.Least || value > band.Most;
}
