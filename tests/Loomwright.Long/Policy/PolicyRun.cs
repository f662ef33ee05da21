using System.Text;
using Loomwright.Diagnosis;
using Loomwright.Text;

namespace Loomwright.Long.Policy;

/// <summary>The order of asking beside the best there is, on sets of 32 to 64 causes of three examples (<c>--count</c>: how many in all).</summary>
internal static class PolicyRun
{
    private const int Usual = 50, Fewest = 32, Most = 64;
    private const double GoalMean = 1.085, GoalWorst = 1.35, GoalGain = 0.02;
    private const int MostMilliseconds = 100;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private sealed record Came(int Causes, double Greedy, double Rollout, double Least, bool Proven, int Stuck, double Milliseconds)
    {
        public double OfGreedy => Greedy / Least;

        public double OfRollout => Rollout / Least;
    }

    public static string Run(LongRun run)
    {
        string[] examples = ["kittiwake-bench", "sandpiper", "kittiwake"];
        var all = new List<(string Example, bool Symptom, Came Came)>();
        var count = run.Count ?? Usual;
        for (var e = 0; e < examples.Length; e++)
        {
            var table = TroubleTable.Of(Bike.Read(new SourceText(examples[e], File.ReadAllText($"examples/{examples[e]}/{examples[e]}.loom.yaml"))).Loom!);
            for (var i = e; i < count; i += examples.Length)
            {
                run.Progress(all.Count, count);
                var symptom = i / examples.Length % 2 == 1;
                all.Add((examples[e], symptom, Played(Drawn(table, symptom, new Random((int)(run.Seed * 100_000) + i)))));
            }
        }

        var proven = all.Where(a => a.Came.Proven).Select(a => a.Came).ToList();
        run.Failed = proven.Average(c => c.OfGreedy) > GoalMean || proven.Max(c => c.OfGreedy) > GoalWorst;
        var text = new StringBuilder("| causes of | sets | causes | repairs known at best after, minutes | proven | the rule, mean | worst | a step ahead, mean | worst |\n|---|---|---|---|---|---|---|---|---|\n");
        foreach (var some in all.GroupBy(a => $"{a.Example}, {(a.Symptom ? "one symptom" : "all listed")}", StringComparer.Ordinal))
        {
            text.Append(Row(some.Key, [.. some.Select(s => s.Came)]));
        }

        text.Append(Row("**all**", [.. all.Select(a => a.Came)]));
        text.Append(FormattableString.Invariant($"\nGoals: mean at most {GoalMean}, worst at most {GoalWorst}. Looking a step ahead takes {(1 - (proven.Sum(c => c.OfRollout) / proven.Sum(c => c.OfGreedy))) * 100:0.0} % off the rule's minutes (worth keeping from {GoalGain * 100:0} % on). Worked out by asking the rule anew for what each answer would leave, that takes {all.Average(a => a.Came.Milliseconds):0} ms of computing a question on average, {all.Max(a => a.Came.Milliseconds):0} ms at worst; a question may take {MostMilliseconds} ms, so it is {(all.Max(a => a.Came.Milliseconds) > MostMilliseconds ? "left out" : "possible")}.\n"));
        text.Append(FormattableString.Invariant($"Sets not proven within {Patience.TotalSeconds:0} s: {all.Count - proven.Count}{string.Join("", all.Where(a => !a.Came.Proven).Select(a => FormattableString.Invariant($"; {a.Example}: {a.Came.Causes} causes, the rule at most {a.Came.OfGreedy:0.00}")))}. Times the rule found nothing worth asking though something parted the causes: {all.Sum(a => a.Came.Stuck)}.\n"));
        text.Append(Words);
        return text.ToString();
    }

    private const string Words = """

        Each set is drawn: 32 to 64 causes that some question tells apart, from all listed or from those that share one symptom. Each has its share by the table of priors; the repair is to be known, whatever it takes.
        Simplified against a real search: answers are without error; a reading tells apart what the product thinks a meter tells apart within the set; a check finds what it more likely finds than not; a question costs what it costs from rest, no control left where it is; nothing is left out because it could harm.
        The rule is the product's own, asked anew for what is left. “A step ahead” tries its best eight at every question and takes the one after which the rule needs least.

        """;

    private static string Row(string name, List<Came> some)
    {
        var proven = some.Where(c => c.Proven).ToList();
        return proven.Count == 0 ? FormattableString.Invariant($"| {name} | {some.Count} | | | 0 | | | | |\n") : FormattableString.Invariant(
            $"| {name} | {some.Count} | {some.Min(c => c.Causes)}–{some.Max(c => c.Causes)} | {proven.Average(c => c.Least):0.00} | {proven.Count} | {proven.Average(c => c.OfGreedy):0.000} | {proven.Max(c => c.OfGreedy):0.000} | {proven.Average(c => c.OfRollout):0.000} | {proven.Max(c => c.OfRollout):0.000} |\n");
    }

    private static CauseSet Drawn(TroubleTable table, bool symptom, Random random)
    {
        var count = random.Next(Fewest, Most + 1);
        if (!symptom)
        {
            return CauseSet.Drawn(table, table.Singles, count, random)!;
        }

        // What anything shows otherwise than the bike with nothing wrong, somewhere.
        var healthy = table.Singles[0].Looks;
        var symptoms = (from s in Enumerable.Range(0, table.Table.Stimuli.Length)
                        from o in Enumerable.Range(0, table.Table.Observables.Length)
                        from shown in table.Singles.Where(h => !h.Looks[s].Signs.IsEmpty && h.Looks[s].Signs[o] != healthy[s].Signs[o]).GroupBy(h => h.Looks[s].Signs[o])
                        where shown.Count() >= Fewest
                        select shown.ToList()).ToList();
        while (true)
        {
            var pool = symptoms[random.Next(symptoms.Count)];
            if (CauseSet.Drawn(table, pool, random.Next(Fewest, Math.Min(count, pool.Count) + 1), random) is { } set)
            {
                return set;
            }
        }
    }

    private static Came Played(CauseSet set)
    {
        var (all, play) = (set.Riddle.All, new Play(set));
        var (weight, greedy, rollout) = (set.Riddle.Weight(all), play.Greedy(all), play.Rollout(all));
        var (least, proven) = Optimum.Of(set.Riddle, Math.Min(greedy, rollout), Patience);
        return new(set.Riddle.Weights.Length, greedy / weight, rollout / weight, least / weight, proven, play.Stuck, Play.Milliseconds(set));
    }
}
