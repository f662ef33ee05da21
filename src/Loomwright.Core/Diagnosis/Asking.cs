using System.Collections.Immutable;
using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>Which question tells most about the repair for a minute's work.</summary>
internal sealed class Asking
{
    // What is not among the likeliest that make up this share does not decide the next question.
    private const double Live = 0.995;
    private const int MostLive = 300;

    // Minutes, judgement: a look, a control moved, probes set.
    private const double LookMinutes = 0.3, MoveMinutes = 0.1, ProbeMinutes = 0.8;

    // Two readings further apart than this many spreads are told apart.
    private const double Apart = 2.5;

    private readonly FaultTable _table;
    private readonly ImmutableArray<Hypothesis> _all;
    private readonly ImmutableArray<(int Red, int? Black)> _probes;
    private readonly int[][] _looks;
    private readonly int[] _repairs;

    /// <param name="table">What faults look like.</param>
    /// <param name="all">What may be wrong.</param>
    /// <param name="probes">Where the two probes may go, by places among the table's points.</param>
    public Asking(FaultTable table, ImmutableArray<Hypothesis> all, ImmutableArray<(int Red, int? Black)> probes)
    {
        (_table, _all, _probes) = (table, all, probes);
        _looks = [.. Enumerable.Range(0, table.Stimuli.Length).Select(LookIds)];
        _repairs = Numbered(all.Select(h => h.Repair));
    }

    /// <summary>All questions worth asking, the best first.</summary>
    /// <param name="weights">Share of each hypothesis.</param>
    /// <param name="at">What was done last; null before anything.</param>
    /// <param name="asked">Questions that were answered already and are not asked again.</param>
    public ImmutableArray<Question> Ranked(double[] weights, int? at, IReadOnlySet<(int Stimulus, int? Red, int? Black)> asked)
    {
        var live = LiveOf(weights);
        var found = new List<Question>();
        for (var s = 0; s < _table.Stimuli.Length; s++)
        {
            var minutes = LookMinutes + Moving(at, s);
            if (!asked.Contains((s, null, null)))
            {
                found.Add(new Question.Look(s, minutes, Told(weights, live, e => _looks[s][e])));
            }
        }

        // A meter is worth its time only where something flows: where the looks differ most, or nothing tells them apart any more.
        var where = found.Count > 0 ? found.OrderByDescending(q => q.Bits).Select(q => q.Stimulus).Take(6) : [];
        foreach (var s in where.Concat(at is { } here ? [here] : []).Distinct())
        {
            foreach (var (red, black) in _probes.Where(p => !asked.Contains((s, p.Red, p.Black))))
            {
                var bits = Told(weights, live, Readings(live, s, red, black));
                if (bits > 0)
                {
                    found.Add(new Question.Volts(s, red, black, ProbeMinutes + Moving(at, s), bits));
                }
            }
        }

        return [.. found.Where(q => q.Bits > 0.005).OrderByDescending(q => q.Worth).ThenBy(q => q.Stimulus)];
    }

    /// <summary>Which answer a hypothesis gives to a question: equal where the answers cannot be told apart, −1 when it is too unlikely to matter.</summary>
    public int Answer(double[] weights, Question question, int hypothesis)
    {
        var live = LiveOf(weights);
        return !live.Contains(hypothesis) ? -1 : question is Question.Volts v ? Readings(live, v.Stimulus, v.Red, v.Black)(hypothesis) : _looks[question.Stimulus][hypothesis];
    }

    private static List<int> LiveOf(double[] weights)
    {
        var all = weights.Sum();
        var live = new List<int>();
        var sum = 0.0;
        foreach (var e in Enumerable.Range(0, weights.Length).OrderByDescending(e => weights[e]))
        {
            live.Add(e);
            sum += weights[e];
            if (sum >= Live * all || live.Count == MostLive)
            {
                break;
            }
        }

        return live;
    }

    // Entropy of the repair before, less what is left of it on average after the answer.
    private double Told(double[] weights, List<int> live, Func<int, int> answerOf)
    {
        var byRepair = new Dictionary<int, double>();
        var byAnswer = new Dictionary<int, double>();
        var both = new Dictionary<(int, int), double>();
        var all = 0.0;
        foreach (var e in live)
        {
            var (answer, repair, weight) = (answerOf(e), _repairs[e], weights[e]);
            byRepair[repair] = byRepair.GetValueOrDefault(repair) + weight;
            byAnswer[answer] = byAnswer.GetValueOrDefault(answer) + weight;
            both[(answer, repair)] = both.GetValueOrDefault((answer, repair)) + weight;
            all += weight;
        }

        return byAnswer.Count < 2 ? 0 : Math.Max(0, Bits(byRepair.Values, all) + Bits(byAnswer.Values, all) - Bits(both.Values, all));
    }

    private static double Bits(IEnumerable<double> weights, double all) => -weights.Where(w => w > 0).Sum(w => w / all * Math.Log2(w / all));

    // Those whose readings a meter does not tell apart get one number.
    private Func<int, int> Readings(List<int> live, int stimulus, int red, int? black)
    {
        var groups = new Dictionary<int, int>();
        var (group, last) = (0, double.NegativeInfinity);
        foreach (var (entry, volts) in live.Select(e => (e, Likelihood.Volts(_all[e].Looks[stimulus], red, black))).OrderBy(v => v.Item2))
        {
            group += volts - last > Apart * Misreading.Spread(volts) ? 1 : 0;
            groups[entry] = group;
            last = volts;
        }

        return e => groups[e];
    }

    // Controls that stand otherwise than they should, and the wait.
    private double Moving(int? at, int stimulus)
    {
        var (from, to) = (at is { } a ? Controls(_table.Stimuli[a]) : [], Controls(_table.Stimuli[stimulus]));
        var wait = _table.Stimuli[stimulus].Operations.OfType<Operation.Wait>().Sum(w => w.Time.TotalMinutes);
        return wait + (MoveMinutes * to.Except(from).Count());
    }

    private static HashSet<(string, string)> Controls(Stimulus stimulus) => [.. stimulus.Operations.OfType<Operation.Set>().Select(s => (s.Control, s.Position))];

    private int[] LookIds(int stimulus) => Numbered(_all.Select(h => Convert.ToHexString(h.Looks[stimulus].Signs.AsSpan())));

    private static int[] Numbered(IEnumerable<string> names)
    {
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        return [.. names.Select(n => known.TryGetValue(n, out var id) ? id : known[n] = known.Count)];
    }
}
