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

    // Never 0, whatever was answered: as a logarithm beside the likeliest.
    private const double Least = -600;

    private static readonly int Batteries = Battery.Shares.Length;

    /// <summary>After all these answers.</summary>
    public Belief(FaultTable table, ImmutableArray<Hypothesis> all, ImmutableArray<Evidence> answers)
    {
        All = all;
        Weighing = new Weighing(table, answers);
        Weights = new double[all.Length];
        var both = new double[all.Length * Batteries];
        for (var h = 0; h < all.Length; h++)
        {
            var byBattery = both.AsSpan(h * Batteries, Batteries);
            Weighing.Of(all[h], byBattery);
            foreach (ref var weight in byBattery)
            {
                weight += Math.Log(all[h].Prior);
            }
        }

        // The largest is taken out before the logarithms are undone, so that nothing becomes 0 in going on.
        var most = both.Max();
        var likeliest = Array.IndexOf(both, most);
        Likeliest = all[likeliest / Batteries];
        BatteryPlace = likeliest % Batteries;
        for (var i = 0; i < both.Length; i++)
        {
            Weights[i / Batteries] += Math.Exp(Math.Max(both[i] - most, Least));
        }

        var listed = Weights.Sum();
        Against = Weighing.Against(Likeliest, BatteryPlace);
        var best = Weighing.Of(Likeliest, BatteryPlace) + Against.Sum() + answers.Sum(Likelihood.UnderSomethingElse) - (Likeliest.IsOfTheBattery ? Battery.MoreWithItsFault : 0);

        // It explains them alike with each state of the battery.
        var other = Batteries * SomethingElse * Math.Exp(Math.Min(-Least, best + Math.Log(all.Sum(h => h.Prior)) - most));
        Other = Math.Clamp(other / (listed + other), SomethingElse, 1 - SomethingElse);
        for (var h = 0; h < all.Length; h++)
        {
            Weights[h] *= (1 - Other) / listed;
        }
    }

    /// <summary>What may be wrong.</summary>
    public ImmutableArray<Hypothesis> All { get; }

    /// <summary>How the answers go with each.</summary>
    public Weighing Weighing { get; }

    /// <summary>Share of each; with <see cref="Other"/> they make 1.</summary>
    public double[] Weights { get; }

    /// <summary>Share of something that is not in the list.</summary>
    public double Other { get; }

    /// <summary>The likeliest hypothesis …</summary>
    public Hypothesis Likeliest { get; }

    /// <summary>… how far each answer is from the likeliest one with it …</summary>
    public ImmutableArray<double> Against { get; }

    /// <summary>… and the battery's state with it, by its place among <see cref="Battery.Shares"/>.</summary>
    public int BatteryPlace { get; }
}
