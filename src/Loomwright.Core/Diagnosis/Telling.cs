using System.Collections.Immutable;

namespace Loomwright.Diagnosis;

/// <summary>How much an answer would tell about the repair: its entropy before, less what is left of it on average. Not for two threads at once.</summary>
internal sealed class Telling
{
    private readonly double[] _weights;
    private readonly double[] _terms;
    private readonly int[] _repairs;
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
        _terms = [.. _weights.Select(Term)];
        _repairs = [.. Entries.Select(e => repairs[e])];
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
        var unseen = shows.GroupBy(s => s.Place).ToDictionary(g => g.Key, g => Math.Max(0, _weights[g.Key] - g.Sum(s => s.Seen)));
        var nothing = Enumerable.Range(0, Entries.Length).Select(i => (i, unseen.TryGetValue(i, out var left) ? left : _weights[i]));
        var (entropy, largest) = Left(nothing);
        foreach (var found in shows.GroupBy(s => s.Found, StringComparer.Ordinal))
        {
            var (left, share) = Left(found.Select(s => (s.Place, s.Seen)));
            (entropy, largest) = (entropy + left, Math.Max(largest, share));
        }

        return (check, Math.Max(0, _before - entropy) / _all, largest / _all);
    }

    // Entropy of the repair among some that gave the same answer, times their share; and that.
    private (double Entropy, double Share) Left(IEnumerable<(int Place, double Weight)> some)
    {
        var (sum, terms, repair, ofRepair) = (0.0, 0.0, -1, 0.0);
        foreach (var (place, weight) in some)
        {
            if (_repairs[place] != repair)
            {
                terms += Term(ofRepair);
                (repair, ofRepair) = (_repairs[place], 0);
            }

            ofRepair += weight;
            sum += weight;
        }

        return (Term(sum) - terms - Term(ofRepair), sum);
    }

    private (double Entropy, double Largest) Left(ReadOnlySpan<int> answers)
    {
        var (entropy, count) = (0.0, 0);
        for (var from = 0; from < answers.Length;)
        {
            var to = from + 1;
            while (to < answers.Length && _repairs[to] == _repairs[from])
            {
                to++;
            }

            var touched = 0;
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
                var answer = _touched[t];
                entropy -= to - from == 1 ? _terms[from] : Term(_ofRepair[answer]);
                if (_byAnswer[answer] == 0)
                {
                    _answers[count++] = answer;
                }

                _byAnswer[answer] += _ofRepair[answer];
                _ofRepair[answer] = 0;
            }

            from = to;
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
