using System.Collections.Concurrent;
using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Dictionary;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Sizing;

namespace Loomwright.Diagnosis;

/// <summary>What a search works with: what every fault looks like, where probes may go, and how two faults look together.</summary>
public sealed class TroubleTable
{
    // Two at once are simulated only where, put together from what each does alone, they go with the answers.
    private const int MostAlone = 80, MostPairs = 24;
    private const double NothingWrong = 0.02;

    // A smell may come from elsewhere (judgement).
    private const double NotHot = 0.03;

    private readonly Loom _loom;
    private readonly ImmutableArray<(int Red, int? Black)> _probes;
    private readonly Lazy<Asking> _asking;
    private readonly ConcurrentDictionary<(string Faults, int Stimulus), bool> _harms = new();

    private TroubleTable(Loom loom, FaultTable table, ImmutableArray<Hypothesis> singles)
    {
        (_loom, Table, Singles) = (loom, table, singles);
        _probes = [.. table.Points.Select((_, p) => (p, (int?)null)), .. loom.Wires.Select(w => (table.Points.IndexOf(w.From), (int?)table.Points.IndexOf(w.To)))];
        _asking = new(() => new Asking(Table, Singles, _probes));
    }

    /// <summary>Makes it for a whole bike. Takes as long as its dictionary.</summary>
    /// <param name="loom">The bike as designed.</param>
    /// <param name="also">What was done besides what is usual; what is usual anyway is there once.</param>
    /// <param name="priors">What is known of how it was made.</param>
    /// <param name="stop">Ends the work early; then <see cref="OperationCanceledException"/> is thrown.</param>
    public static TroubleTable Of(Loom loom, IEnumerable<Stimulus>? also = null, PriorOptions? priors = null, CancellationToken stop = default)
    {
        var usual = Stimuli.Usual(loom);
        var options = new DictionaryOptions
        {
            Stimuli = [.. usual, .. (also ?? []).Where(a => !usual.Any(u => u.Operations.SequenceEqual(a.Operations))).Distinct()],
            Points = PointsOf(loom),
            Priors = priors ?? new(),
            Stop = stop,
        };
        var table = FaultTable.Of(loom, options);
        return new(loom, table, Hypothesis.Singles(loom, table, NothingWrong));
    }

    /// <summary>Where probes may go: every wire's ends.</summary>
    internal static ImmutableArray<TerminalRef> PointsOf(Loom loom) => [.. loom.Wires.SelectMany(w => new[] { w.From, w.To }).Distinct()];

    /// <summary>The place of something done; null when the table was not made with it.</summary>
    public int? Place(Stimulus done) => Enumerable.Range(0, Table.Stimuli.Length).Where(s => Table.Stimuli[s].Operations.SequenceEqual(done.Operations)).Select(s => (int?)s).FirstOrDefault();

    /// <summary>What every single fault looks like.</summary>
    public FaultTable Table { get; }

    /// <summary>Nothing wrong, then every single fault.</summary>
    public ImmutableArray<Hypothesis> Singles { get; }

    /// <summary>Whether an observable (by its place) shows a sign under anything in the list, somewhere.</summary>
    public bool CanShow(int observable, byte sign) => Singles.Any(h => h.Looks.Any(l => !l.Signs.IsEmpty && l.Signs[observable] == sign));

    /// <summary>What a check may find, as it should be left out.</summary>
    public ImmutableArray<string> Findable(Check check) => [.. Singles.SelectMany(h => h.Traces).Where(t => t.Check == check).Select(t => t.Found).Distinct(StringComparer.Ordinal)];

    internal Asking Asking(ImmutableArray<Hypothesis> all) => all == Singles ? _asking.Value : new(Table, all, _probes);

    /// <summary>Two faults at once that go with the answers, each as simulation shows it; the likeliest first.</summary>
    internal ImmutableArray<Hypothesis> Pairs(ImmutableArray<Evidence> answers, double battery)
    {
        double Fit(Hypothesis h) => answers.Sum(a => Math.Log(Likelihood.Of(Table, h, battery, a)));
        var alone = Singles.Skip(1)
            .OrderByDescending(h => Math.Log(h.Prior) + answers.Max(a => Math.Log(Likelihood.Of(Table, h, battery, a) / Likelihood.Of(Table, Singles[0], battery, a))))
            .Take(MostAlone).ToList();
        var pairs = from i in Enumerable.Range(0, alone.Count)
                    from j in Enumerable.Range(i + 1, alone.Count - i - 1)
                    where alone[i].Repair != alone[j].Repair
                    orderby Math.Log(alone[i].Prior * alone[j].Prior) + Fit(Together(alone[i], alone[j], answers)) descending
                    select (One: alone[i], Other: alone[j]);
        return [.. pairs.Take(MostPairs).GroupBy(p => p.One).SelectMany(g => Simulated(g.Key, [.. g.Select(p => p.Other)]))];
    }

    /// <summary>Whether a fuse would blow or something burn or break where the bike with nothing wrong has none of it. Simulated when first asked; a fault that is not felt there has the healthy look itself.</summary>
    public bool Harms(Hypothesis hypothesis, int stimulus) =>
        !hypothesis.Faults.IsEmpty && !ReferenceEquals(hypothesis.Looks[stimulus], Singles[0].Looks[stimulus]) && _harms.GetOrAdd((string.Join('|', hypothesis.Faults.Take(hypothesis.Repairs.Length).Select(f => f.Fault)), stimulus), _ => Blows(hypothesis.Looks[stimulus], stimulus) || Burns(hypothesis, stimulus));

    private bool Blows(Look look, int stimulus)
    {
        var healthy = Singles[0].Looks[stimulus].Signs;
        return look.Signs.IsEmpty || Enumerable.Range(0, look.Signs.Length).Any(o => Table.Observables[o].Sense == Sense.Fuse && look.Signs[o] != healthy[o] && (FuseState)look.Signs[o] != FuseState.Whole);
    }

    private bool Burns(Hypothesis hypothesis, int stimulus)
    {
        var loom = hypothesis.Faults.Take(hypothesis.Repairs.Length).Aggregate(_loom, (l, f) => Patch.Apply(l, f.Fault));
        return new Rig(loom, new RigOptions { Healthy = _loom }).Play(Table.Stimuli[stimulus].Operations).Any(frame => !Harm.Of(loom, frame).IsEmpty);
    }

    private IEnumerable<Hypothesis> Simulated(Hypothesis one, ImmutableArray<Hypothesis> others)
    {
        var options = new DictionaryOptions { Stimuli = Table.Stimuli, Points = Table.Points, FullLight = _loom, Faults = [.. others.Select(o => o.Faults[0])] };
        var both = FaultTable.Of(Patch.Apply(_loom, one.Faults[0].Fault), options);
        return others.Select(o => new Hypothesis(
            [one.Faults[0], o.Faults[0]], [one.Repair, o.Repair], one.Prior * o.Prior, both.Find(o.Faults[0].Fault.ToString())!.Looks, [.. one.Traces, .. o.Traces]));
    }

    /// <summary>The table with every hypothesis weighed by what is known besides looks and volts.</summary>
    /// <param name="by">Above 0: how well it goes with that, 1 for as well as one would wish.</param>
    public TroubleTable Weighed(Func<Hypothesis, double> by) => new(_loom, Table, [.. Singles.Select(h => h with { Prior = h.Prior * by(h) })]);

    /// <summary>The table after something there got hot, smoked or smelt: what could do harm under that stimulus goes before the rest.</summary>
    public TroubleTable Hot(int stimulus) => Weighed(h => Harms(h, stimulus) ? 1 : NotHot);

    /// <summary>The table after a repair: every fault weighed by how it goes with the old answers while the mended one was still there.</summary>
    internal TroubleTable After(Hypothesis mended, ImmutableArray<Evidence> answers)
    {
        var left = Singles.Where(h => h.Repair != mended.Repair || h.Faults.IsEmpty).ToImmutableArray();
        var weights = Belief.Of(Table, [.. left.Select(h => Together(h, mended, answers))], answers).Weights;
        return new(_loom, Table, [.. left.Zip(weights, (h, w) => h with { Prior = w })]);
    }

    // Both at once, as far as the answers ask for it.
    private Hypothesis Together(Hypothesis one, Hypothesis other, ImmutableArray<Evidence> answers)
    {
        var looks = one.Looks.ToBuilder();
        foreach (var s in answers.Select(a => a.Place.Stimulus).OfType<int>().Distinct())
        {
            looks[s] = Together(Singles[0].Looks[s], one.Looks[s], other.Looks[s]);
        }

        return one with { Looks = looks.MoveToImmutable(), Traces = [.. one.Traces, .. other.Traces] };
    }

    // What one of two changes is taken from that one; what both change, from the second: a first guess, simulated where it matters.
    private static Look Together(Look healthy, Look one, Look other)
    {
        if (one.Signs.IsEmpty || other.Signs.IsEmpty || healthy.Signs.IsEmpty)
        {
            return one.Signs.IsEmpty ? one : other;
        }

        return other with
        {
            Signs = [.. other.Signs.Select((sign, o) => sign == healthy.Signs[o] ? one.Signs[o] : sign)],
            Volts = [.. other.Volts.Select((v, p) => Math.Abs(v - healthy.Volts[p]) >= Math.Abs(one.Volts[p] - healthy.Volts[p]) ? v : one.Volts[p])],
        };
    }
}
