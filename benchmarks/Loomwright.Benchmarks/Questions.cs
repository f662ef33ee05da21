using System.Diagnostics;
using Loomwright.Diagnosis;

namespace Loomwright.Benchmarks;

/// <summary>From an answer to the next question of a search, beside making the table the search works with.</summary>
internal static class Questions
{
    private const double GoalMilliseconds = 100;

    // The first compile; the middle of the others counts.
    private const int Warming = 3, Rounds = 9;

    public static void Print()
    {
        var loom = Cases.Loom("kittiwake");
        var watch = Stopwatch.StartNew();
        var table = TroubleTable.Of(loom);
        var tableMilliseconds = watch.Elapsed.TotalMilliseconds;
        var odd = Enumerable.Range(0, table.Table.Stimuli.Length).Select(s => (Stimulus: s, Wrong: table.Singles.FirstOrDefault(h => !h.Looks[s].LooksLike(table.Singles[0].Looks[s])))).Where(o => o.Wrong is not null).Take(Warming + Rounds);
        var times = new List<(double Milliseconds, double Computing)>();
        foreach (var (stimulus, wrong) in odd)
        {
            var answer = new Evidence.Seen(stimulus, [.. wrong!.Looks[stimulus].Signs.Select((sign, o) => (o, sign))]);
            var begun = Trouble.Begin(table);
            using var process = Process.GetCurrentProcess();
            var before = process.TotalProcessorTime;
            watch.Restart();
            _ = begun.After(answer).Questions;
            var milliseconds = watch.Elapsed.TotalMilliseconds;
            process.Refresh();
            times.Add((milliseconds, (process.TotalProcessorTime - before).TotalMilliseconds));
        }

        var counted = times.Skip(Warming).Order().ToList();
        var middle = counted[counted.Count / 2];
        Console.WriteLine();
        Console.WriteLine(FormattableString.Invariant($"the next question, kittiwake, {table.Singles.Length} things that may be wrong, milliseconds (goal {GoalMilliseconds:0})"));
        Console.WriteLine(FormattableString.Invariant($"{"from an answer to the question",-32} {middle.Milliseconds,12:F1}   worst {counted[^1].Milliseconds:F1}   computing {counted.Average(t => t.Computing):F1}"));
        Console.WriteLine(FormattableString.Invariant($"{"the table it works with",-32} {tableMilliseconds,12:F1}"));
        Console.WriteLine(FormattableString.Invariant($"{"ratio",-32} {tableMilliseconds / middle.Milliseconds,12:F1}"));
    }
}
