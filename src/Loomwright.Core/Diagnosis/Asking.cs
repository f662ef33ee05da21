using System.Collections.Immutable;
using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>Which question tells most about the repair for a minute's work.</summary>
internal sealed class Asking
{
    /// <summary>Minutes for a look and to set the probes; judgement, as the others.</summary>
    public const double LookMinutes = 0.3, ProbeMinutes = 0.8;

    private const double MoveMinutes = 0.1;

    // What is not among the likeliest that make up this share does not decide the next question.
    private const double Live = 0.995;
    private const int MostLive = 300;

    // A meter is worth its time only where something flows: where the looks differ most, and where the bike stands.
    private const int MostMeasured = 6;

    // From here on a lamp that would be lit is as likely dim.
    private const double TooDim = 0.25;

    // What tells less is not worth asking.
    private const double LeastBits = 0.01;

    // Two readings further apart than this many spreads are told apart, if not by the share by which the battery may stand otherwise.
    private const double Apart = 2.5, BatteryDiffers = 0.04;

    private readonly FaultTable _table;
    private readonly ImmutableArray<Hypothesis> _all;
    private readonly ImmutableArray<(int Red, int? Black)> _probes;
    private readonly int[][] _looks;

    // With a low battery dim says nothing.
    private readonly int[][] _looksInTheDim;
    private readonly int[] _repairs;

    /// <param name="table">What faults look like.</param>
    /// <param name="all">What may be wrong.</param>
    /// <param name="probes">Where the two probes may go, by places among the table's points.</param>
    public Asking(FaultTable table, ImmutableArray<Hypothesis> all, ImmutableArray<(int Red, int? Black)> probes)
    {
        (_table, _all, _probes) = (table, all, probes);
        _looks = [.. Enumerable.Range(0, table.Stimuli.Length).Select(s => LookIds(s, dimIsLit: false))];
        _looksInTheDim = [.. Enumerable.Range(0, table.Stimuli.Length).Select(s => LookIds(s, dimIsLit: true))];
        _repairs = Numbered(all.Select(h => h.Repair), StringComparer.Ordinal);
    }

    /// <summary>All questions worth asking, the best first.</summary>
    /// <param name="weights">Share of each hypothesis.</param>
    /// <param name="battery">The battery's state, by its place.</param>
    /// <param name="at">What was done last; null before anything and with the key off.</param>
    /// <param name="asked">Questions that were answered already and are not asked again.</param>
    public ImmutableArray<Question> Ranked(double[] weights, int battery, int? at, IReadOnlySet<Asked> asked)
    {
        var looks = Battery.Dims[battery] > TooDim ? _looksInTheDim : _looks;
        var live = new Telling(LiveOf(weights), weights, _repairs);
        var found = new List<Question>();
        for (var s = 0; s < _table.Stimuli.Length; s++)
        {
            if (!asked.Contains(new Asked(s)))
            {
                found.Add(new Question.Look(s, LookMinutes + Moving(at, s), live.Bits(looks[s])));
            }
        }

        var where = found.OrderByDescending(q => q.Bits).Select(q => q.Stimulus!.Value).Take(MostMeasured);
        foreach (var s in where.Concat(at is { } here ? [here] : []).Distinct().ToList())
        {
            found.AddRange(_probes.Where(p => !asked.Contains(new Asked(s, p.Red, p.Black)))
                .Select(p => new Question.Volts(s, p.Red, p.Black, ProbeMinutes + Moving(at, s), live.Bits(Readings(live.Entries, s, p.Red, p.Black)))));
        }

        found.AddRange(live.Entries.SelectMany(e => _all[e].Traces).Select(t => t.Check).Distinct()
            .Where(c => !asked.Contains(new Asked(null, Check: c)))
            .Select(c => new Question.Of(c, c.Minutes, live.Bits(e => _all[e].Traces, c))));
        return [.. found.Where(q => q.Bits > LeastBits).OrderByDescending(q => q.Worth).ThenBy(q => q.Stimulus)];
    }

    /// <summary>Which answer a hypothesis gives to a look or a measurement: equal where the answers cannot be told apart, −1 when it is too unlikely to matter.</summary>
    public int[] Answers(double[] weights, Question question)
    {
        var live = LiveOf(weights);
        var answers = new int[_all.Length];
        Array.Fill(answers, -1);
        var told = question is Question.Volts v ? Readings(live, v.At, v.Red, v.Black) : _looks[question.Stimulus!.Value];
        foreach (var e in live)
        {
            answers[e] = told[e];
        }

        return answers;
    }

    private static int[] LiveOf(double[] weights)
    {
        var left = Live * weights.Sum();
        return [.. Enumerable.Range(0, weights.Length).OrderByDescending(e => weights[e]).Take(MostLive).TakeWhile(e => (left -= weights[e]) > -weights[e])];
    }

    // Those whose readings a meter does not tell apart get one number.
    private int[] Readings(int[] live, int stimulus, int red, int? black)
    {
        var volts = new double[live.Length];
        var amps = 0.0;
        for (var i = 0; i < live.Length; i++)
        {
            var look = _all[live[i]].Looks[stimulus];
            volts[i] = Likelihood.Volts(look, red, black);
            amps = i == 0 ? Math.Abs(look.SupplyAmps) : amps;
        }

        var order = (int[])live.Clone();
        Array.Sort(volts, order);
        var groups = new int[_all.Length];
        var group = 0;
        for (var i = 0; i < order.Length; i++)
        {
            group += i > 0 && volts[i] - volts[i - 1] > (Apart * Misreading.Spread(volts[i], amps)) + (BatteryDiffers * Math.Abs(volts[i])) ? 1 : 0;
            groups[order[i]] = group;
        }

        return groups;
    }

    // Controls that stand otherwise than they should, and the wait.
    private double Moving(int? at, int stimulus)
    {
        var (from, to) = (at is { } a ? Controls(_table.Stimuli[a]) : [], Controls(_table.Stimuli[stimulus]));
        var wait = _table.Stimuli[stimulus].Operations.OfType<Operation.Wait>().Sum(w => w.Time.TotalMinutes);
        return wait + (MoveMinutes * to.Except(from).Count());
    }

    private static HashSet<(string, string)> Controls(Stimulus stimulus) => [.. stimulus.Operations.OfType<Operation.Set>().Select(s => (s.Control, s.Position))];

    private int[] LookIds(int stimulus, bool dimIsLit) => Numbered(_all.Select(h => dimIsLit ? Undimmed(h.Looks[stimulus].Signs) : h.Looks[stimulus].Signs), SameSigns.Comparer);

    private ImmutableArray<byte> Undimmed(ImmutableArray<byte> signs) =>
        [.. signs.Select((sign, o) => _table.Observables[o].Sense == Sense.Sight && (Symbol)sign == Symbol.Dim ? (byte)Symbol.Lit : sign)];

    private static int[] Numbered<T>(IEnumerable<T> all, IEqualityComparer<T> same)
        where T : notnull
    {
        var known = new Dictionary<T, int>(same);
        return [.. all.Select(n => known.TryGetValue(n, out var id) ? id : known[n] = known.Count)];
    }

    private sealed class SameSigns : IEqualityComparer<ImmutableArray<byte>>
    {
        public static readonly SameSigns Comparer = new();

        public bool Equals(ImmutableArray<byte> x, ImmutableArray<byte> y) => x == y || x.AsSpan().SequenceEqual(y.AsSpan());

        public int GetHashCode(ImmutableArray<byte> signs)
        {
            var hash = default(HashCode);
            hash.AddBytes(signs.AsSpan());
            return hash.ToHashCode();
        }
    }
}
