using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Loomwright.Diagnosis;

/// <summary>How much an answer would tell about the repair: its entropy before, less what is left of it on average. Not for two threads at once.</summary>
internal sealed class Telling
{
    private readonly double[] _weights;
    private readonly int[] _repairs;

    // Where those of one repair begin, with the end of the last; and by repair what is likely in all, with its part of the entropy.
    private readonly int[] _begins;
    private readonly double[] _ofAll;
    private readonly double[] _terms;
    private readonly double _all;
    private readonly double _before;

    // By answer: what goes with it, and what of that has the repair that is just counted.
    private readonly double[] _byAnswer;
    private readonly double[] _ofRepair;
    private readonly int[] _answers;
    private readonly int[] _touched;

    /// <param name="entries">The hypotheses that matter, by their places.</param>
    /// <param name="weights">Share of each hypothesis.</param>
    /// <param name="repairs">Number of the repair of each.</param>
    public Telling(int[] entries, double[] weights, int[] repairs)
    {
        Entries = [.. entries.OrderBy(e => repairs[e])];
        _weights = [.. Entries.Select(e => weights[e])];
        var numbers = Entries.Select(e => repairs[e]).ToArray();
        _begins = [.. Enumerable.Range(0, Entries.Length).Where(i => i == 0 || numbers[i] != numbers[i - 1]), Entries.Length];
        _repairs = [.. Enumerable.Range(0, _begins.Length - 1).SelectMany(r => Enumerable.Repeat(r, _begins[r + 1] - _begins[r]))];
        _ofAll = [.. Enumerable.Range(0, _begins.Length - 1).Select(r => _weights.AsSpan()[_begins[r].._begins[r + 1]].ToArray().Sum())];
        _terms = [.. _ofAll.Select(Term)];
        (_byAnswer, _ofRepair) = (new double[Entries.Length], new double[Entries.Length]);
        (_answers, _touched) = (new int[Entries.Length], new int[Entries.Length]);
        _all = _weights.Sum();
        _before = Left(new int[Entries.Length]).Entropy;
    }

    /// <summary>The hypotheses that matter, those with the same repair together.</summary>
    public int[] Entries { get; }

    /// <summary>Of a question to which each hypothesis gives one answer.</summary>
    /// <param name="answers">In the order of <see cref="Entries"/>, numbered from 0 and below their count: equal where the answers cannot be told apart.</param>
    /// <returns>What it is expected to tell, and the share of the likeliest answer.</returns>
    public (double Bits, double Largest) Of(ReadOnlySpan<int> answers)
    {
        var (left, largest) = Left(answers);
        return (Math.Max(0, _before - left) / _all, largest / _all);
    }

    /// <summary>Of every check of the thing itself that finds something, which may overlook what is there.</summary>
    /// <param name="traces">What the checks find, by hypothesis.</param>
    public IEnumerable<(Check Check, double Bits, double Largest)> Checks(Func<int, ImmutableArray<Trace>> traces) =>
        Enumerable.Range(0, Entries.Length).SelectMany(i => traces(Entries[i]).Select(t => (Place: i, t.Check, t.Found, Seen: _weights[i] * t.Chance * (1 - Misreading.Overlooked))))
            .GroupBy(s => s.Check)
            .Select(g => Of(g.Key, [.. g.Select(s => (s.Place, s.Found, s.Seen))]));

    private (Check Check, double Bits, double Largest) Of(Check check, List<(int Place, string Found, double Seen)> shows)
    {
        var (unseen, terms) = (_all, _terms.Sum());
        foreach (var repair in shows.GroupBy(s => _repairs[s.Place]))
        {
            var left = Math.Max(0, _ofAll[repair.Key] - repair.Sum(s => s.Seen));
            (unseen, terms) = (unseen - _ofAll[repair.Key] + left, terms - _terms[repair.Key] + Term(left));
        }

        var (entropy, largest) = (Term(unseen) - terms, unseen);
        foreach (var found in shows.GroupBy(s => s.Found, StringComparer.Ordinal))
        {
            var seen = found.Sum(s => s.Seen);
            entropy += Term(seen) - found.GroupBy(s => _repairs[s.Place]).Sum(r => Term(r.Sum(s => s.Seen)));
            largest = Math.Max(largest, seen);
        }

        return (check, Math.Max(0, _before - entropy) / _all, largest / _all);
    }

    // Entropy of the repair among those that give the same answer, times their share, over all answers; and the largest of these shares.
    // Thousands of times in the first question already: not left to be compiled well later.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private (double Entropy, double Largest) Left(ReadOnlySpan<int> answers)
    {
        var (entropy, count) = (0.0, 0);
        for (var r = 0; r < _terms.Length; r++)
        {
            var (from, to) = (_begins[r], _begins[r + 1]);
            var first = answers[from];
            var touched = 0;
            if (answers[from..to].IndexOfAnyExcept(first) < 0)
            {
                _touched[touched++] = first;
                _ofRepair[first] = _ofAll[r];
                entropy -= _terms[r];
            }
            else
            {
                for (var i = from; i < to; i++)
                {
                    var answer = answers[i];
                    if (_ofRepair[answer] == 0)
                    {
                        _touched[touched++] = answer;
                    }

                    _ofRepair[answer] += _weights[i];
                }

                for (var t = 0; t < touched; t++)
                {
                    entropy -= Term(_ofRepair[_touched[t]]);
                }
            }

            for (var t = 0; t < touched; t++)
            {
                var answer = _touched[t];
                if (_byAnswer[answer] == 0)
                {
                    _answers[count++] = answer;
                }

                _byAnswer[answer] += _ofRepair[answer];
                _ofRepair[answer] = 0;
            }
        }

        var largest = 0.0;
        for (var a = 0; a < count; a++)
        {
            var answer = _answers[a];
            entropy += Term(_byAnswer[answer]);
            largest = Math.Max(largest, _byAnswer[answer]);
            _byAnswer[answer] = 0;
        }

        return (entropy, largest);
    }

    private static double Term(double weight) => weight > 0 ? weight * Math.Log2(weight) : 0;
}
