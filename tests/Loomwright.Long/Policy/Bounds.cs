using System.Numerics;
using System.Runtime.Intrinsics.X86;

namespace Loomwright.Long.Policy;

/// <summary>What any order of asking takes at least for a set of causes, in minutes times weight.</summary>
internal sealed class Bounds
{
    // A group's table has two to the power of this many entries.
    private const int MostInGroup = 20;

    private readonly Riddle _riddle;

    // For each cause, from the dearest: which others only a question of that price or above tells from it.
    private readonly (double Minutes, ulong Others)[][] _apart;

    // By how many repairs are left: the most bits a minute that any question can give.
    private readonly double[] _bits;

    // Some causes each, and the least minutes for every subset of them: nothing is easier to tell apart with more beside it.
    private readonly (ulong Some, double[] Minutes)[] _groups;

    /// <summary>Works out what all sets have in common.</summary>
    public Bounds(Riddle riddle)
    {
        _riddle = riddle;
        _apart = [.. Enumerable.Range(0, riddle.Weights.Length).Select(Apart)];
        _bits = [.. Enumerable.Range(0, 65).Select(n => riddle.Choices.Max(c => Math.Log2(Math.Min(c.Answers.Length, Math.Max(2, n))) / c.Minutes))];
        _groups = [.. Groups().Select(g => (g, OfSubsets(g)))];
    }

    /// <summary>
    /// Each cause needs a question that tells it from whatever is hardest to tell from it; all together need their bits; and each
    /// group of causes what it needs alone.
    /// </summary>
    public double AtLeast(ulong left)
    {
        if ((left & (left - 1)) == 0)
        {
            return 0;
        }

        var (apart, all, groups) = (0.0, 0.0, 0.0);
        Span<double> repairs = stackalloc double[64];
        repairs.Clear();
        for (var rest = left; rest != 0; rest &= rest - 1)
        {
            var cause = BitOperations.TrailingZeroCount(rest);
            repairs[_riddle.Labels[cause]] += _riddle.Weights[cause];
            all += _riddle.Weights[cause];
            foreach (var (minutes, others) in _apart[cause])
            {
                if ((others & left) != 0)
                {
                    apart += minutes * _riddle.Weights[cause];
                    break;
                }
            }
        }

        foreach (var (some, minutes) in _groups)
        {
            groups += minutes[Squeezed(left, some)];
        }

        return Math.Max(groups, Math.Max(apart, Bits(repairs, all)));
    }

    private double Bits(ReadOnlySpan<double> repairs, double all)
    {
        var (bits, count) = (0.0, 0);
        foreach (var repair in repairs)
        {
            if (repair > 0)
            {
                bits -= repair * Math.Log2(repair / all);
                count++;
            }
        }

        return bits / _bits[count];
    }

    private (double Minutes, ulong Others)[] Apart(int cause) =>
    [
        .. Enumerable.Range(0, _riddle.Weights.Length).Where(o => _riddle.Labels[o] != _riddle.Labels[cause])
            .Select(o => (Other: o, Minutes: _riddle.Choices.Where(c => !Array.Exists(c.Answers, a => (a >> cause & 1) != 0 && (a >> o & 1) != 0)).Min(c => c.Minutes)))
            .GroupBy(o => o.Minutes).OrderByDescending(g => g.Key).Select(g => (g.Key, g.Aggregate(0UL, (m, o) => m | (1UL << o.Other)))),
    ];

    // Begun with the heaviest cause that is left over, then whatever is hardest to tell from those in it.
    private IEnumerable<ulong> Groups()
    {
        var over = Enumerable.Range(0, _riddle.Weights.Length).ToList();
        while (over.Count > 0)
        {
            var group = 0UL;
            for (var n = 0; n < MostInGroup && over.Count > 0; n++)
            {
                var next = over.MaxBy(o => (_apart[o].Sum(a => a.Minutes * _riddle.Weight(a.Others & group)) + (group == 0 ? 1 : 0)) * _riddle.Weights[o]);
                over.Remove(next);
                group |= 1UL << next;
            }

            yield return group;
        }
    }

    private double[] OfSubsets(ulong group)
    {
        var places = Enumerable.Range(0, _riddle.Weights.Length).Where(c => (group >> c & 1) != 0).ToList();
        var small = new Riddle(
            [.. places.Select(p => _riddle.Weights[p])], [.. places.Select(p => _riddle.Labels[p])],
            [.. _riddle.Choices.Select(c => new Choice(c.Minutes, [.. c.Answers.Where(a => (a & group) != 0).Select(a => (ulong)Squeezed(a, group))]))]).Undominated();
        var minutes = new double[1 << places.Count];
        for (var some = 1; some < minutes.Length; some++)
        {
            minutes[some] = small.Known((ulong)some) ? 0 : OfSubset(small, some, minutes);
        }

        return minutes;
    }

    // Every part of a subset has a smaller number than the subset, so it is worked out already.
    private static double OfSubset(Riddle small, int some, double[] minutes)
    {
        var (weight, best) = (small.Weight((ulong)some), double.PositiveInfinity);
        foreach (var choice in small.Choices)
        {
            var (total, parts) = (choice.Minutes * weight, 0);
            foreach (var answer in choice.Answers)
            {
                if (((int)answer & some) is var part and not 0)
                {
                    total += minutes[part];
                    parts++;
                }
            }

            best = parts > 1 ? Math.Min(best, total) : best;
        }

        return best;
    }

    // The bits of one set that are in another, moved together.
    private static int Squeezed(ulong left, ulong some)
    {
        if (Bmi2.X64.IsSupported)
        {
            return (int)Bmi2.X64.ParallelBitExtract(left, some);
        }

        var (squeezed, bit) = (0, 1);
        for (; some != 0; some &= some - 1, bit <<= 1)
        {
            squeezed |= (left & some & (~some + 1)) != 0 ? bit : 0;
        }

        return squeezed;
    }
}
