using System.Diagnostics;

namespace Loomwright.Long.Policy;

/// <summary>Minutes times weight until the repair is known when the product's rule chooses, and when it is looked a step ahead with it.</summary>
internal sealed class Play(CauseSet set)
{
    // Of how many of the best by the rule it is looked ahead.
    private const int Ahead = 8;

    private readonly Dictionary<ulong, double> _greedy = [], _rollout = [];
    private readonly Dictionary<ulong, List<Choice>> _ranked = [];

    /// <summary>In how many sets of causes the rule found nothing worth asking though they could be parted.</summary>
    public int Stuck { get; private set; }

    /// <summary>As the product's rule asks.</summary>
    public double Greedy(ulong left) => Of(left, _greedy, some => Ranked(some)[0], Greedy);

    /// <summary>As that one of the best by the rule after which the rule needs least.</summary>
    public double Rollout(ulong left) => Of(left, _rollout, Best, Rollout);

    /// <summary>Milliseconds of computing to look a step ahead once, nothing known from before.</summary>
    public static double Milliseconds(CauseSet set)
    {
        var play = new Play(set);
        using var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        _ = play.Best(set.Riddle.All);
        process.Refresh();
        return (process.TotalProcessorTime - before).TotalMilliseconds;
    }

    private Choice Best(ulong left) => Ranked(left).MinBy(c => After(c, left, Greedy))!;

    private double Of(ulong left, Dictionary<ulong, double> known, Func<ulong, Choice> chosen, Func<ulong, double> then)
    {
        if (set.Riddle.Known(left))
        {
            return 0;
        }

        if (!known.TryGetValue(left, out var minutes))
        {
            known[left] = minutes = After(chosen(left), left, then);
        }

        return minutes;
    }

    private double After(Choice choice, ulong left, Func<ulong, double> then) =>
        (choice.Minutes * set.Riddle.Weight(left)) + choice.Answers.Select(a => a & left).Where(a => a != 0).Sum(then);

    // Where the rule finds nothing worth asking, what parts them for least is asked.
    private List<Choice> Ranked(ulong left)
    {
        if (!_ranked.TryGetValue(left, out var ranked))
        {
            ranked = [.. set.Ranked(left).Where(c => Parts(c, left)).DistinctBy(c => string.Join(',', c.Answers.Select(a => a & left).Order())).Take(Ahead)];
            if (ranked.Count == 0)
            {
                Stuck++;
                ranked.Add(set.Riddle.Choices.Where(c => Parts(c, left)).MinBy(c => c.Minutes)!);
            }

            _ranked[left] = ranked;
        }

        return ranked;
    }

    private static bool Parts(Choice choice, ulong left) => choice.Answers.Count(a => (a & left) != 0) > 1;
}
