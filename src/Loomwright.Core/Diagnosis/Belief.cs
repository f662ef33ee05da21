using System.Collections.Immutable;
using Loomwright.Dictionary;

namespace Loomwright.Diagnosis;

/// <summary>
/// How likely each hypothesis is after what was answered, whatever the battery's state, which is found on the way. No weight
/// is ever 0: beside them stands something that is not in the list, which explains anything a little.
/// </summary>
internal sealed class Belief
{
    /// <summary>Share of something not in the list before anything was answered, and at least afterwards.</summary>
    public const double SomethingElse = 0.02;

    private static readonly int Batteries = Battery.Shares.Length;

    private readonly FaultTable _table;

    // A row for each hypothesis, a column for each state of the battery.
    private readonly double[] _both;

    private Belief(FaultTable table, ImmutableArray<Hypothesis> all, double[] both, double other)
    {
        (_table, All, _both, Other) = (table, all, both, other);
        Weights = [.. Enumerable.Range(0, all.Length).Select(h => both.AsSpan(h * Batteries, Batteries).ToArray().Sum())];
        var likeliest = Array.IndexOf(_both, _both.Max());
        (Likeliest, BatteryShare) = (All[likeliest / Batteries], Battery.Shares[likeliest % Batteries]);
    }

    /// <summary>What may be wrong.</summary>
    public ImmutableArray<Hypothesis> All { get; }

    /// <summary>Share of each; with <see cref="Other"/> they make 1.</summary>
    public double[] Weights { get; }

    /// <summary>Share of something that is not in the list.</summary>
    public double Other { get; }

    /// <summary>The likeliest hypothesis …</summary>
    public Hypothesis Likeliest { get; }

    /// <summary>… and the battery's rest voltage with it, as a share of the one written down.</summary>
    public double BatteryShare { get; }

    /// <summary>After all these answers.</summary>
    public static Belief Of(FaultTable table, ImmutableArray<Hypothesis> all, IEnumerable<Evidence> answers)
    {
        var sum = all.Sum(h => h.Prior) * Batteries;
        var start = new Belief(table, all, [.. all.SelectMany(h => Enumerable.Repeat(h.Prior / sum * (1 - SomethingElse), Batteries))], SomethingElse);
        return answers.Aggregate(start, (belief, answer) => belief.After(answer));
    }

    /// <summary>After one more answer.</summary>
    public Belief After(Evidence answer)
    {
        if (answer is Evidence.NotSure)
        {
            return this;
        }

        var both = new double[_both.Length];
        for (var h = 0; h < All.Length; h++)
        {
            for (var b = 0; b < Batteries; b++)
            {
                var i = (h * Batteries) + b;
                both[i] = _both[i] * Likelihood.Of(_table, All[h], Battery.Shares[b], answer);
            }
        }

        var other = Other * Likelihood.UnderSomethingElse(answer);
        var listed = both.Sum();
        var kept = Math.Max(other / (listed + other), SomethingElse);
        return new(_table, All, [.. both.Select(w => w * (1 - kept) / listed)], kept);
    }
}
