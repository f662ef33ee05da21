using System.Diagnostics;

namespace Loomwright.Long.Policy;

/// <summary>
/// The least expected minutes until the repair is known, whatever the order of asking: branch and bound, depth first, with
/// a memory of what was found for each set of causes. Minutes are times weight, not divided by the sum.
/// </summary>
internal sealed class Optimum
{
    private readonly Riddle _riddle;
    private readonly Bounds _bounds;
    private readonly TimeSpan _most;
    private readonly Stopwatch _watch = Stopwatch.StartNew();
    private readonly Dictionary<ulong, (double Minutes, bool Exact)> _known = [];
    private bool _gaveUp;

    private Optimum(Riddle riddle, TimeSpan most) => (_riddle, _most, _bounds) = (riddle, most, new Bounds(riddle));

    /// <summary>The least minutes times weight, and whether that is proven; else what any order of asking takes at least.</summary>
    /// <param name="riddle">What is to be told apart.</param>
    /// <param name="atMost">What some order of asking is known to take.</param>
    /// <param name="most">When to give up.</param>
    public static (double Minutes, bool Proven) Of(Riddle riddle, double atMost, TimeSpan most)
    {
        if (riddle.Known(riddle.All))
        {
            return (0, true);
        }

        riddle = riddle.Undominated();
        var search = new Optimum(riddle, most);
        var found = search.Least(riddle.All, [.. Enumerable.Range(0, riddle.Choices.Length)], atMost);
        return search._gaveUp ? (search._bounds.AtLeast(riddle.All), false) : (found.Exact ? found.Minutes : atMost, true);
    }

    // Exact where it is below the bound; else at least the bound is needed.
    private (double Minutes, bool Exact) Least(ulong left, int[] choices, double bound)
    {
        if (_riddle.Known(left))
        {
            return (0, true);
        }

        if (_known.TryGetValue(left, out var known) && (known.Exact || known.Minutes >= bound))
        {
            return known;
        }

        _gaveUp |= _watch.Elapsed > _most;
        if (_gaveUp)
        {
            return (bound, false);
        }

        var splits = Splits(left, choices);
        int[] own = [.. splits.Select(s => s.Choice)];
        var best = (Minutes: bound, Exact: false);
        foreach (var split in splits.OrderBy(s => s.AtLeast).TakeWhile(s => s.AtLeast < best.Minutes))
        {
            var total = Asked(split, own, best.Minutes);
            best = total < best.Minutes ? (total, true) : best;
        }

        if (!_gaveUp)
        {
            _known[left] = best;
        }

        return best;
    }

    // With that question first; infinite as soon as it is not below the bound.
    private double Asked(Split split, int[] choices, double bound)
    {
        var total = split.AtLeast;
        foreach (var (part, atLeast) in split.Parts)
        {
            var (minutes, exact) = Least(part, choices, bound - total + atLeast);
            total += minutes - atLeast;
            if (!exact || total >= bound)
            {
                return double.PositiveInfinity;
            }
        }

        return total;
    }

    private sealed record Split(int Choice, double AtLeast, List<(ulong Part, double AtLeast)> Parts);

    // What each question makes of the set; of those that make the same only the cheapest.
    private List<Split> Splits(ulong left, int[] choices)
    {
        var weight = _riddle.Weight(left);
        var places = new Dictionary<ulong, int>();
        var splits = new List<Split>();
        foreach (var c in choices)
        {
            var choice = _riddle.Choices[c];
            var parts = new List<(ulong Part, double AtLeast)>();
            var (total, mark) = (choice.Minutes * weight, 0UL);
            foreach (var answer in choice.Answers)
            {
                if ((answer & left) is var part and not 0)
                {
                    parts.Add((part, _bounds.AtLeast(part)));
                    total += parts[^1].AtLeast;
                    mark += Mixed(part);
                }
            }

            if (parts.Count < 2)
            {
                continue;
            }

            if (!places.TryGetValue(mark, out var at))
            {
                places.Add(mark, splits.Count);
                splits.Add(new Split(c, total, parts));
            }
            else if (total < splits[at].AtLeast)
            {
                splits[at] = new Split(c, total, parts);
            }
        }

        return splits;
    }

    // Every bit of a part moves about half of the bits of the result, so that the sum over the parts tells different splits apart.
    private static ulong Mixed(ulong part)
    {
        part = (part ^ (part >> 30)) * 0xBF58476D1CE4E5B9UL;
        part = (part ^ (part >> 27)) * 0x94D049BB133111EBUL;
        return part ^ (part >> 31);
    }
}
