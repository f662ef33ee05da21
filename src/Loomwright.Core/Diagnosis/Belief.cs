using System.Collections.Immutable;
using Loomwright.Dictionary;

namespace Loomwright.Diagnosis;

/// <summary>
/// How likely each hypothesis is after what was answered. No weight is ever 0: beside them stands something that is not in
/// the list, which explains anything a little.
/// </summary>
internal sealed class Belief
{
    /// <summary>Share of something not in the list before anything was answered, and at least afterwards.</summary>
    public const double SomethingElse = 0.02;

    private readonly FaultTable _table;

    private Belief(FaultTable table, ImmutableArray<Hypothesis> all, double[] weights, double other) => (_table, All, Weights, Other) = (table, all, weights, other);

    /// <summary>What may be wrong.</summary>
    public ImmutableArray<Hypothesis> All { get; }

    /// <summary>Share of each; with <see cref="Other"/> they make 1.</summary>
    public double[] Weights { get; }

    /// <summary>Share of something that is not in the list.</summary>
    public double Other { get; }

    /// <summary>After all these answers.</summary>
    public static Belief Of(FaultTable table, ImmutableArray<Hypothesis> all, IEnumerable<Evidence> answers)
    {
        var sum = all.Sum(h => h.Prior);
        var start = new Belief(table, all, [.. all.Select(h => h.Prior / sum * (1 - SomethingElse))], SomethingElse);
        return answers.Aggregate(start, (belief, answer) => belief.After(answer));
    }

    /// <summary>After one more answer.</summary>
    public Belief After(Evidence answer)
    {
        var weights = new double[All.Length];
        for (var h = 0; h < weights.Length; h++)
        {
            weights[h] = Weights[h] * Likelihood.Of(_table, All[h].Looks[answer.Stimulus], answer);
        }

        var other = Other * Likelihood.UnderSomethingElse(answer);
        var listed = weights.Sum();
        var kept = Math.Max(other / (listed + other), SomethingElse);
        return new(_table, All, [.. weights.Select(w => w * (1 - kept) / listed)], kept);
    }

    /// <summary>What sets it right, each with the share of all that the same work sets right, the likeliest first.</summary>
    public ImmutableArray<(string Repair, double Share)> Repairs() =>
    [
        .. Weights.Select((w, h) => (All[h].Repair, Weight: w))
            .GroupBy(r => r.Repair, StringComparer.Ordinal)
            .Select(g => (g.Key, Share: g.Sum(r => r.Weight)))
            .OrderByDescending(r => r.Share).ThenBy(r => r.Key, StringComparer.Ordinal),
    ];

    /// <summary>The likeliest hypothesis.</summary>
    public Hypothesis Likeliest => All[Array.IndexOf(Weights, Weights.Max())];
}
