using System.Text;
using Loomwright.Diagnosis;
using Loomwright.Tests.Diagnosis;
using Loomwright.Text;

namespace Loomwright.Long;

/// <summary>Searches for a cause on the bench example and two whole ones (<c>--count</c>: how many each and rate), at two rates of slips, beside three other orders of asking, and with two faults at once (<c>--only NAME</c>: one example).</summary>
internal static class SearchRun
{
    private const int Usual = 5000;

    private static readonly string[] Examples = ["kittiwake-bench", "sandpiper", "kittiwake"];

    // What is shown beside, for every so many searches one, and at least so many.
    private const int Beside = 20, LeastBeside = 100;
    private const double GoalAtTwo = 0.955, GoalAtFive = 0.91, FirstOfTwo = 0.90, SecondOfTwo = 0.95;

    public static string Run(LongRun run)
    {
        var text = new StringBuilder();
        foreach (var example in Examples.Where(e => run.Only is null || run.Only == e))
        {
            var loom = Bike.Read(new SourceText(example, File.ReadAllText($"examples/{example}/{example}.loom.yaml"))).Loom!;
            var sessions = new Searches(loom, TroubleTable.Of(loom));
            var count = run.Count ?? Usual;
            var beside = Math.Max(LeastBeside, count / Beside);
            text.Append(FormattableString.Invariant($"## {example}\n\n"));
            foreach (var (misreads, goal) in new[] { (0.02, GoalAtTwo), (0.05, GoalAtFive) })
            {
                var counts = SearchCounts.Of(example, [.. Played(run, count, seed => sessions.One(seed, misreads))]);
                const double mostUntold = 0.15;
                run.Failed |= counts.LowerBound < goal || counts.Untold > mostUntold * count || Math.Abs(counts.Stated - (counts.First / (double)count)) > 0.03;
                Console.Error.WriteLine(counts.ToText());
                text.Append(FormattableString.Invariant($"Slips {misreads * 100:0} %, goal for the lower bound {goal * 100:0.0} %:\n\n```\n{counts.ToText()}```\n\n"));
            }

            text.Append(FormattableString.Invariant($"{beside} searches each, slips 2 %:\n\n| order of asking | true repair first | questions | minutes |\n|---|---|---|---|\n"));
            foreach (var order in Enum.GetValues<Searches.Order>())
            {
                var played = Played(run, beside, seed => sessions.One(seed, 0.02, order)).ToList();
                text.Append(FormattableString.Invariant($"| {order} | {played.Count(p => p.First) * 100.0 / played.Count:0.0} % | {played.Average(p => p.Questions):0.00} | {played.Average(p => p.Minutes):0.00} |\n"));
            }

            var pairs = Played(run, beside, seed => sessions.Two(seed, 0.02)).ToList();
            var first = pairs.Count(p => p.First);
            var second = pairs.Count(p => p.Second);
            run.Failed |= first < FirstOfTwo * pairs.Count || second < SecondOfTwo * first;
            text.Append(FormattableString.Invariant($"\nTwo faults at once, {pairs.Count} searches: one of them among the first three {first * 100.0 / pairs.Count:0.0} % (goal 90 %); the other among the first three after its repair {second * 100.0 / Math.Max(1, first):0.0} % (goal 95 %).\n\n"));
        }

        return text.ToString();
    }

    private static IEnumerable<T> Played<T>(LongRun run, int count, Func<int, T> one)
    {
        for (var i = 0; i < count; i++)
        {
            run.Progress(i, count);
            yield return one((int)(run.Seed * 100_000) + i);
        }
    }
}
