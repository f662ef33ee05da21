using System.Collections.Immutable;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Long.Policy;

/// <summary>
/// Some causes of a bike as a riddle, and the same causes as the product asks about them. Answers are without error: a look shows
/// all signs, a meter tells apart what the product thinks it tells apart among these causes, a check finds what it more likely
/// finds than not. Every question costs what it costs from rest. What could harm is not left out.
/// </summary>
internal sealed class CauseSet
{
    private readonly Asking _asking;
    private readonly double[] _priors;
    private readonly int[] _classes;
    private readonly Dictionary<Asked, Choice> _choices;

    private CauseSet(Asking asking, Riddle riddle, double[] priors, int[] classes, Dictionary<Asked, Choice> choices) =>
        (_asking, Riddle, _priors, _classes, _choices) = (asking, riddle, priors, classes, choices);

    /// <summary>What is to be told apart; a cause of it is what no question parts.</summary>
    public Riddle Riddle { get; }

    /// <summary>So many causes drawn from a pool; null when there are not that many in it that can be told apart.</summary>
    public static CauseSet? Drawn(TroubleTable table, IEnumerable<Hypothesis> pool, int count, Random random)
    {
        var shuffled = pool.ToArray();
        random.Shuffle(shuffled);
        for (var taken = count; taken <= shuffled.Length;)
        {
            var set = Of(table, [.. shuffled.AsSpan(0, taken)]);
            if (set.Riddle.Weights.Length == count)
            {
                return set;
            }

            taken += count - set.Riddle.Weights.Length;
        }

        return null;
    }

    /// <summary>The questions worth asking by the product's own rule when only these are left, the best first.</summary>
    public IEnumerable<Choice> Ranked(ulong left) =>
        _asking.Ranked([.. _priors.Select((p, h) => (left >> _classes[h] & 1) != 0 ? p : 0)], Battery.AsWritten, null, new HashSet<Asked>(), _ => true).Select(q => _choices[q.Place]);

    private static CauseSet Of(TroubleTable table, ImmutableArray<Hypothesis> causes)
    {
        var product = new Asking(table.Table, causes, table.Probes);
        var equal = causes.Select(_ => 1.0 / causes.Length).ToArray();
        var told = new Dictionary<Asked, (double Minutes, int[] Answers)>();
        for (var s = 0; s < table.Table.Stimuli.Length; s++)
        {
            var moving = product.Moving(null, s);
            told.Add(new Asked(s), (Asking.LookMinutes + moving, product.Answers(equal, Battery.AsWritten, new Question.Look(s, 0, 0))));
            for (var p = 0; p < table.Probes.Length; p++)
            {
                var (red, black) = table.Probes[p];
                told.Add(new Asked(s, p), (Asking.ProbeMinutes + moving, product.Answers(equal, Battery.AsWritten, new Question.Volts(s, red, black, 0, 0))));
            }
        }

        ImmutableArray<Hypothesis> plain =
        [
            .. causes.Select((c, h) => c with
            {
                Looks = [.. c.Looks.Select((_, s) => Plain(table, told[new Asked(s)].Answers[h], [.. table.Probes.Select((_, p) => told[new Asked(s, p)].Answers[h])]))],
                Traces = [.. c.Traces.GroupBy(t => t.Check).Select(g => g.MaxBy(t => t.Chance)).Where(t => t.Chance > 0.5).Select(t => t with { Chance = 1 })],
            }),
        ];
        foreach (var check in plain.SelectMany(c => c.Traces).Select(t => t.Check).Distinct())
        {
            var finds = plain.Select(c => c.Traces.Where(t => t.Check == check).Select(t => t.Found).FirstOrDefault() ?? "").ToList();
            told.Add(new Asked(null, Check: check), (check.Minutes, [.. finds.Select(f => finds.IndexOf(f))]));
        }

        return Of(new Asking(table.Table, plain, [.. table.Probes.Select((_, p) => (p, (int?)null))]), causes, told);
    }

    private static CauseSet Of(Asking asking, ImmutableArray<Hypothesis> causes, Dictionary<Asked, (double Minutes, int[] Answers)> told)
    {
        var classes = new int[causes.Length];
        foreach (var (_, answers) in told.Values)
        {
            var known = new Dictionary<(int, int), int>();
            for (var h = 0; h < classes.Length; h++)
            {
                classes[h] = known.TryGetValue((classes[h], answers[h]), out var id) ? id : known[(classes[h], answers[h])] = known.Count;
            }
        }

        // Where several repairs are behind what no question parts, it is known when that alone is left.
        var members = Enumerable.Range(0, classes.Max() + 1).Select(c => Enumerable.Range(0, classes.Length).Where(h => classes[h] == c).ToList()).ToList();
        var repairs = members.Select((m, c) => m.Select(h => causes[h].Repair).Distinct(StringComparer.Ordinal).ToList() is [var one] ? one : FormattableString.Invariant($"{c}")).ToList();
        var choices = told.ToDictionary(t => t.Key, t => Choice.Of(t.Value.Minutes, members.Select(m => t.Value.Answers[m[0]])));
        var riddle = new Riddle([.. members.Select(m => m.Sum(h => causes[h].Prior))], [.. repairs.Select(r => repairs.IndexOf(r))], [.. choices.Values]);
        return new(asking, riddle.Weights.Length <= 64 ? riddle.Undominated() : riddle, [.. causes.Select(c => c.Prior)], classes, choices);
    }

    // A look as told: every sign says which of the answers it is, every point is one place of the probes.
    private static Look Plain(TroubleTable table, int look, ImmutableArray<int> readings) =>
        new(Outcome.Settled, [.. table.Table.Observables.Select(_ => (byte)(100 + look))], 0, [.. readings.Select(Reading)]);

    // Each number far from the next, by more than any spread a meter has there, now above, now below 0.
    private static double Reading(int number) => (number % 2 == 0 ? 1 : -1) * 1.34 * (Math.Pow(1.15, (number + 1) / 2) - 1);
}
