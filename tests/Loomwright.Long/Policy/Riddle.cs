using System.Numerics;

namespace Loomwright.Long.Policy;

/// <summary>Causes to be told apart by questions that are answered without error; sets of causes are bit masks.</summary>
/// <param name="Weights">Of each cause, above 0; up to 64.</param>
/// <param name="Labels">The repair of each cause: once all that are left have the same, it is over.</param>
/// <param name="Choices">What may be asked.</param>
internal sealed record Riddle(double[] Weights, int[] Labels, Choice[] Choices)
{
    /// <summary>All causes.</summary>
    public ulong All => Weights.Length == 64 ? ulong.MaxValue : (1UL << Weights.Length) - 1;

    /// <summary>Whether all that are left are mended by the same work.</summary>
    public bool Known(ulong left)
    {
        var label = Labels[BitOperations.TrailingZeroCount(left)];
        for (var rest = left & (left - 1); rest != 0; rest &= rest - 1)
        {
            if (Labels[BitOperations.TrailingZeroCount(rest)] != label)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Weight of a set.</summary>
    public double Weight(ulong some)
    {
        var sum = 0.0;
        for (; some != 0; some &= some - 1)
        {
            sum += Weights[BitOperations.TrailingZeroCount(some)];
        }

        return sum;
    }

    /// <summary>The same without questions that another one is at least as good as: its answers part all that theirs do, for no more minutes.</summary>
    public Riddle Undominated()
    {
        var cheapest = Choices.Where(c => c.Answers.Length > 1)
            .GroupBy(c => string.Join(',', c.Answers.Order()), StringComparer.Ordinal).Select(g => g.MinBy(c => c.Minutes)!)
            .OrderBy(c => c.Minutes).ThenByDescending(c => c.Answers.Length).ToList();
        var kept = new List<Choice>();
        foreach (var choice in cheapest)
        {
            if (!kept.Exists(k => k.Refines(choice)))
            {
                kept.Add(choice);
            }
        }

        return this with { Choices = [.. kept] };
    }
}

/// <summary>A question: what it costs and which causes give each answer.</summary>
/// <param name="Minutes">Above 0.</param>
/// <param name="Answers">The causes by answer; together all, none twice.</param>
internal sealed record Choice(double Minutes, ulong[] Answers)
{
    /// <summary>The causes by answer from a number for each cause.</summary>
    public static Choice Of(double minutes, IEnumerable<int> answers) =>
        new(minutes, [.. answers.Select((a, cause) => (Answer: a, Bit: 1UL << cause)).GroupBy(a => a.Answer).Select(g => g.Aggregate(0UL, (m, a) => m | a.Bit))]);

    /// <summary>Whether each answer of this lies within one answer of the other.</summary>
    public bool Refines(Choice other) => Array.TrueForAll(Answers, mine => Array.Exists(other.Answers, theirs => (mine & ~theirs) == 0));
}
