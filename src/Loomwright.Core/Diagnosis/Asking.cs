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

    // Where the looks differ most there is most to measure, and where the bike stands. When many causes are left it is not measured
    // everywhere: that would take too long to work out; with fewer in more places, for the same work.
    private const int MostMeasured = 6;

    // What tells less is not worth asking.
    private const double LeastBits = 0.01;

    private readonly FaultTable _table;
    private readonly ImmutableArray<Hypothesis> _all;
    private readonly ImmutableArray<(int Red, int? Black)> _probes;
    private readonly Alike _alike;

    /// <param name="table">What faults look like.</param>
    /// <param name="all">What may be wrong.</param>
    /// <param name="probes">Where the two probes may go, by places among the table's points.</param>
    public Asking(FaultTable table, ImmutableArray<Hypothesis> all, ImmutableArray<(int Red, int? Black)> probes)
        : this(table, all, probes, Alike.Of(table, all))
    {
    }

    private Asking(FaultTable table, ImmutableArray<Hypothesis> all, ImmutableArray<(int Red, int? Black)> probes, Alike alike) =>
        (_table, _all, _probes, _alike) = (table, all, probes, alike);

    /// <summary>The same with more that may be wrong.</summary>
    /// <param name="all">What may be wrong already, then the rest.</param>
    public Asking With(ImmutableArray<Hypothesis> all) => new(_table, all, _probes, _alike.With(all[_all.Length..]));

    /// <summary>All questions worth asking, the best first.</summary>
    /// <param name="weights">Share of each hypothesis.</param>
    /// <param name="battery">The battery's state, by its place.</param>
    /// <param name="at">What was done last; null before anything and with the key off.</param>
    /// <param name="asked">Questions that were answered already and are not asked again.</param>
    /// <param name="may">Whether a stimulus, by its place, may be brought.</param>
    public IEnumerable<Question> Ranked(double[] weights, int battery, int? at, IReadOnlySet<Asked> asked, Func<int, bool> may)
    {
        var live = new Telling(LiveOf(weights), weights, _alike.Repairs);
        var answers = new int[live.Entries.Length];
        var glances = new Glances(_table, _all, live.Entries, _alike, Battery.Shares[battery]);
        var found = new List<Question>();
        for (var s = 0; s < _table.Stimuli.Length; s++)
        {
            if (!asked.Contains(new Asked(s)))
            {
                glances.Number(s, answers);
                var (bits, largest) = live.Of(answers);
                found.Add(new Question.Look(s, LookMinutes + Moving(at, s), bits) { Largest = largest });
            }
        }

        var where = found.OrderByDescending(q => q.Bits).Select(q => q.Stimulus!.Value).Where(may).Take(MostMeasured * MostLive / live.Entries.Length);
        var readings = new Readings(_all, live.Entries);
        foreach (var s in where.Concat(at is { } here ? [here] : []).Concat(asked.Where(a => a is { Stimulus: not null, Red: null, Check: null }).Select(a => a.Stimulus!.Value).Where(may)).Distinct().ToList())
        {
            var minutes = ProbeMinutes + Moving(at, s);
            readings.At(s);
            foreach (var (red, black) in _probes)
            {
                if (!asked.Contains(new Asked(s, red, black)) && readings.Number(red, black, answers) > 1)
                {
                    var (bits, largest) = live.Of(answers);
                    found.Add(new Question.Volts(s, red, black, minutes, bits) { Largest = largest });
                }
            }
        }

        found.AddRange(live.Checks(e => _all[e].Traces).Where(c => !asked.Contains(new Asked(null, Check: c.Check)))
            .Select(c => new Question.Of(c.Check, c.Check.Minutes, c.Bits) { Largest = c.Largest }));
        return found.Where(q => q.Bits > LeastBits).OrderByDescending(q => q.Worth).ThenBy(q => q.Stimulus).Where(q => q.Stimulus is not { } s || may(s));
    }

    /// <summary>Which answer a hypothesis gives to a look or a measurement: equal where the answers cannot be told apart, −1 when it is too unlikely to matter.</summary>
    public int[] Answers(double[] weights, int battery, Question question)
    {
        var live = LiveOf(weights);
        var told = new int[live.Length];
        if (question is Question.Volts v)
        {
            var readings = new Readings(_all, live);
            readings.At(v.At);
            readings.Number(v.Red, v.Black, told);
        }
        else
        {
            new Glances(_table, _all, live, _alike, Battery.Shares[battery]).Number(question.Stimulus!.Value, told);
        }

        var answers = new int[_all.Length];
        Array.Fill(answers, -1);
        for (var i = 0; i < live.Length; i++)
        {
            answers[live[i]] = told[i];
        }

        return answers;
    }

    /// <summary>Minutes to bring the bike from what was done last (null: from rest) to where a stimulus leaves it: controls that stand otherwise than they should, and the wait.</summary>
    public double Moving(int? at, int stimulus)
    {
        var (from, to) = (at is { } a ? Controls(_table.Stimuli[a]) : [], Controls(_table.Stimuli[stimulus]));
        var wait = _table.Stimuli[stimulus].Operations.OfType<Operation.Wait>().Sum(w => w.Time.TotalMinutes);
        return wait + (MoveMinutes * to.Except(from).Count());
    }

    private static int[] LiveOf(double[] weights)
    {
        var left = Live * weights.Sum();
        return [.. Enumerable.Range(0, weights.Length).OrderByDescending(e => weights[e]).Take(MostLive).TakeWhile(e => (left -= weights[e]) > -weights[e])];
    }

    private static HashSet<(string, string)> Controls(Stimulus stimulus) => [.. stimulus.Operations.OfType<Operation.Set>().Select(s => (s.Control, s.Position))];
}
