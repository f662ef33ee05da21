using System.Diagnostics;
using System.Text;
using Loomwright.Dictionary;
using Loomwright.Text;

namespace Loomwright.Long;

/// <summary>The fault dictionary of every example (<c>--count</c>: so many of them), each fault by shortcuts against the same simulated to the end as a circuit of its own.</summary>
internal static class Dictionaries
{
    public static string Run(LongRun run)
    {
        var rows = new StringBuilder();
        foreach (var path in Directory.GetFiles("examples", "*.loom.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Take(run.Count ?? int.MaxValue))
        {
            var bike = Bike.Read(new SourceText(path, File.ReadAllText(path)));
            var watch = Stopwatch.StartNew();
            var made = FaultTable.Of(bike.Loom!);
            var seconds = watch.Elapsed.TotalSeconds;
            watch.Restart();
            var whole = FaultTable.Of(bike.Loom!, new DictionaryOptions { Shortcuts = false });
            var wholeSeconds = watch.Elapsed.TotalSeconds;
            var (differ, worstVolts) = Compare(made, whole);
            run.Failed |= differ > 0 || worstVolts > MeterVolts;
            rows.Append(FormattableString.Invariant(
                $"| {bike.Loom!.Name} | {bike.Loom.Wires.Length} | {made.Entries.Sum(e => e.Faults.Length)} | {made.Entries.Length - 1} | {made.Stimuli.Length} | {made.Classes.Length} | {seconds:F2} | {made.Solves} | {wholeSeconds:F2} | {whole.Solves} | {differ} | {worstVolts * 1000:F3} |\n"));
        }

        return $"""
            | bike | wires | faults | circuits | stimuli | classes | seconds | operating points | simulated to the end, seconds | operating points | looks that differ | worst difference, mV |
            |---|---|---|---|---|---|---|---|---|---|---|---|
            {rows}

            """;
    }

    /// <summary>What a common meter shows in its last place on its 20 V range.</summary>
    private const double MeterVolts = 0.01;

    private static (int Differ, double WorstVolts) Compare(FaultTable made, FaultTable whole)
    {
        var (differ, worst) = (0, 0.0);
        var looks = made.Entries.Skip(1).SelectMany(e => e.Faults.Select(f => (f.Fault, e.Looks))).ToDictionary(e => e.Fault, e => e.Looks);
        foreach (var other in whole.Entries)
        {
            foreach (var (a, b) in (other.IsHealthy ? made.Healthy.Looks : looks[other.Faults.Single().Fault]).Zip(other.Looks))
            {
                differ += a.Outcome == b.Outcome && a.LooksLike(b) ? 0 : 1;
                worst = a.Volts.Zip(b.Volts, (x, y) => Math.Abs(x - y)).Append(worst).Max();
            }
        }

        return (differ, worst);
    }
}
