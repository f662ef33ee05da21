using System.Collections.Concurrent;
using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Proof;

/// <summary>One stage with all its steps, ready for a fault to be put in.</summary>
internal sealed class StageProof
{
    // What a hand meter's last digits and its tips make of a reading (judgement).
    private const double EffectVolts = 0.05;

    private readonly bool _isWhole;
    private readonly HarmJudge _judge;
    private readonly Lazy<Played> _full;
    private readonly ImmutableArray<bool> _isStopAsked;
    private readonly int _again;
    private readonly ConcurrentDictionary<(string, bool), StageEvidence> _known = new();
    private readonly ConcurrentDictionary<(string, bool), bool> _harms = new();

    /// <param name="stage">The stage.</param>
    /// <param name="whole">The whole design as the bench has it.</param>
    /// <param name="isWhole">Whether everything is simulated to the end, no shortcut taken.</param>
    public StageProof(Stage stage, Loom whole, bool isWhole)
    {
        (Number, _isWhole) = (stage.Number, isWhole);
        Ohmed = new Ohmed(stage, isWhole);
        Looked = new Looked(stage);
        _judge = new HarmJudge(Looked.Played.Wiring, whole);
        _full = new(() => new Played(stage.Full, stage.Steps));
        _again = Looked.Played.BeginOf(Act.Again);
        _isStopAsked = [.. Enumerable.Range(0, Looked.Played.Healthy.Length).Select(m => IsStopAsked(Looked.Played, m, stage))];
    }

    private StageProof(StageProof other, Ohmed ohmed)
    {
        (Number, _isWhole, _judge, _full, _isStopAsked, _again, Looked, Ohmed) = (other.Number, other._isWhole, other._judge, other._full, other._isStopAsked, other._again, other.Looked, ohmed);
    }

    /// <summary>Number of the stage.</summary>
    public int Number { get; }

    public Ohmed Ohmed { get; }

    public Looked Looked { get; }

    public bool CanShow(HarmKind kind) => _judge.CanShow(kind);

    /// <summary>The same stage with other steps before power.</summary>
    public StageProof WithOhms(Stage stage) => new(this, new Ohmed(stage, _isWhole));

    /// <summary>The measurements before power that catch a fault, the clearest first.</summary>
    public ImmutableArray<Ohmed.Caught> Caught(Fault fault) => [.. Ohmed.Catching(fault, _ => true).OrderByDescending(c => c.Margin)];

    /// <summary>What a fault comes to; null where it touches nothing that is connected.</summary>
    /// <param name="fault">The fault.</param>
    /// <param name="isOld">It was there in the stage before: what is done once more from that stage was done with it.</param>
    public StageEvidence? Of(Fault fault, bool isOld)
    {
        var touch = new Touch(Looked.Played.Wiring, fault, _isWhole);
        return !touch.Exists ? null
            : _known.GetOrAdd((touch.Circuit ?? fault.ToString(), isOld), (_, t) => Of(t, isOld), touch);
    }

    /// <summary>Whether it harms; as <see cref="Of(Fault, bool)"/> finds it, without looking what tells it.</summary>
    public bool? Harms(Fault fault, bool isOld)
    {
        var touch = new Touch(Looked.Played.Wiring, fault, _isWhole);
        return !touch.Exists ? null
            : _harms.GetOrAdd((touch.Circuit ?? fault.ToString(), isOld), (_, t) => Harm(t, isOld, (_, _, _) => { }).First is not null, touch);
    }

    private StageEvidence Of(Touch touch, bool isOld)
    {
        var played = Looked.Played;
        var looks = ImmutableArray.CreateBuilder<string>();
        var reads = ImmutableArray.CreateBuilder<string>();
        (int? shows, string? showsAt) = (null, null);
        var harm = Harm(touch, isOld, (moment, with, settler) =>
        {
            foreach (var (step, isRead) in Looked.Telling(touch, moment, with, settler, isOld))
            {
                (isRead ? reads : looks).Add(step);
                (shows, showsAt) = (shows ?? moment, showsAt ?? step);
            }
        });
        return new StageEvidence(Number, Caught(touch.Fault), looks.ToImmutable(), reads.ToImmutable(), shows, harm.Kinds, harm.First is { } h ? played.StepAt(h).Id : null, harm.FirstSmall, harm.HasEffect) { ShowsAt = showsAt };
    }

    // What it harms, in the order met, and from which moment on, on the small fuse too, and whether any volts differ; each moment is given on.
    private (int? First, ImmutableArray<HarmKind> Kinds, int? FirstSmall, bool HasEffect) Harm(Touch touch, bool isOld, Action<int, Settled, Settler> each)
    {
        var played = Looked.Played;
        var kinds = new List<HarmKind>();
        (int? harm, int? smallHarm, var effect, var fused) = (null, null, false, false);
        foreach (var (moment, with, settler) in played.Differing(touch, isOld ? _again : null))
        {
            each(moment, with, settler);
            ImmutableArray<HarmKind> here = [.. _judge.Of(touch, played.Healthy[moment], with, _isStopAsked[moment])];
            var opened = Opened(played, moment, with);
            fused |= opened || IsNearFuse(touch.Wiring, with);
            kinds.AddRange(here.Except(kinds));
            harm ??= here.IsEmpty ? null : moment;
            smallHarm ??= here.Any(k => k != HarmKind.ShortsSupply || !opened) ? moment : null;
            effect |= Differs(played.Healthy[moment], with);
        }

        if (fused)
        {
            (harm, kinds) = AtFullPower(touch.Fault, isOld);
        }

        return (harm, [.. kinds], smallHarm, effect);
    }

    // Where a fuse decides, what stays in decides more.
    private (int? First, List<HarmKind> Kinds) AtFullPower(Fault fault, bool isOld)
    {
        var touch = new Touch(_full.Value.Wiring, fault, _isWhole);
        var (first, kinds) = ((int?)null, new List<HarmKind>());
        foreach (var (moment, with, _) in _full.Value.Differing(touch, isOld ? _again : null))
        {
            ImmutableArray<HarmKind> here = [.. _judge.Of(touch, _full.Value.Healthy[moment], with, _isStopAsked[moment])];
            kinds.AddRange(here.Except(kinds));
            first ??= here.IsEmpty ? null : moment;
        }

        return (first, kinds);
    }

    private static bool Opened(Played played, int moment, Settled with) =>
        played.Wiring.Fuses.Select((_, i) => i).Any(f => with.State.Blown[f] && !played.Healthy[moment].State.Blown[f]);

    private static bool IsNearFuse(Wiring wiring, Settled with) =>
        wiring.Fuses.Any(f => with.Pictures.Any(p => Math.Abs(p.Amps[f.Link]) > f.RatingAmps));

    private static bool Differs(Settled without, Settled with)
    {
        for (var p = 0; p < Math.Min(without.Pictures.Length, with.Pictures.Length); p++)
        {
            var (a, b) = (without.Pictures[p].Volts, with.Pictures[p].Volts);
            for (var n = 0; n < Math.Min(a.Length, b.Length); n++)
            {
                if (Math.Abs(a[n] - b[n]) > EffectVolts)
                {
                    return true;
                }
            }
        }

        return without.Outcome != with.Outcome;
    }

    // A kill switch is at stop, or what wakes the bench is back where it rests.
    private static bool IsStopAsked(Played played, int moment, Stage stage)
    {
        var keys = stage.Steps.Where(s => s.Act == Act.PowerUp).Select(s => s.Do?.Control).OfType<string>().ToHashSet(Names.Comparer);
        var kills = played.Wiring.Loom.Parts.Where(p => p.Kind == "kill switch").Select(p => p.Name).ToHashSet(Names.Comparer);
        var away = played.Wiring.Controls.Where((c, i) => played.Healthy[moment].State.Positions[i] != Wiring.PlaceOf(c, c.Rest)).Select(c => c.Name).ToHashSet(Names.Comparer);
        return kills.Overlaps(away) || !keys.Overlaps(away);
    }
}
