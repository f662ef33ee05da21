using System.Collections.Immutable;

namespace Loomwright.Diagnosis;

/// <summary>How much an answer would tell about the repair: its entropy before, less what is left of it on average.</summary>
internal sealed class Telling
{
    private readonly double[] _weights;
    private readonly int[] _repairs;
    private readonly double[] _byRepair;
    private readonly double _all;
    private readonly double _before;

    /// <param name="entries">The hypotheses that matter, by their places.</param>
    /// <param name="weights">Share of each hypothesis.</param>
    /// <param name="repairs">Number of the repair of each; from 0, without gaps.</param>
    public Telling(int[] entries, double[] weights, int[] repairs)
    {
        (Entries, _weights, _repairs) = (entries, weights, repairs);
        _byRepair = new double[repairs.Max() + 1];
        _all = entries.Sum(e => weights[e]);
        _before = Left(entries.Select(e => (e, weights[e])));
    }

    /// <summary>The hypotheses that matter.</summary>
    public int[] Entries { get; }

    /// <summary>Of a question to which each hypothesis gives one answer.</summary>
    /// <param name="answers">Equal numbers where the answers cannot be told apart.</param>
    public double Bits(int[] answers)
    {
        var order = (int[])Entries.Clone();
        var keys = new int[order.Length];
        for (var i = 0; i < keys.Length; i++)
        {
            keys[i] = answers[order[i]];
        }

        Array.Sort(keys, order);
        if (keys[0] == keys[^1])
        {
            return 0;
        }

        var after = 0.0;
        for (var from = 0; from < keys.Length;)
        {
            var to = from;
            while (to < keys.Length && keys[to] == keys[from])
            {
                to++;
            }

            after += Left(new ArraySegment<int>(order, from, to - from).Select(e => (e, _weights[e])));
            from = to;
        }

        return Math.Max(0, _before - after);
    }

    /// <summary>Of a check of the thing itself, that may overlook what is there.</summary>
    public double Bits(Func<int, ImmutableArray<Trace>> traces, Check check)
    {
        var shows = Entries.SelectMany(e => traces(e).Where(t => t.Check == check).Select(t => (Entry: e, t.Found, t.Chance))).ToList();
        if (shows.Count == 0)
        {
            return 0;
        }

        var unseen = Entries.ToDictionary(e => e, e => _weights[e]);
        foreach (var (entry, _, chance) in shows)
        {
            unseen[entry] = Math.Max(0, unseen[entry] - (_weights[entry] * chance * (1 - Misreading.Overlooked)));
        }

        var after = Left(unseen.Select(u => (u.Key, u.Value)))
            + shows.GroupBy(s => s.Found, StringComparer.Ordinal).Sum(g => Left(g.Select(s => (s.Entry, _weights[s.Entry] * s.Chance * (1 - Misreading.Overlooked)))));
        return Math.Max(0, _before - after);
    }

    // Entropy of the repair among some, times their share of all.
    private double Left(IEnumerable<(int Entry, double Weight)> some)
    {
        var (sum, touched) = (0.0, new List<int>());
        foreach (var (entry, weight) in some)
        {
            if (weight <= 0)
            {
                continue;
            }

            var repair = _repairs[entry];
            if (_byRepair[repair] == 0)
            {
                touched.Add(repair);
            }

            _byRepair[repair] += weight;
            sum += weight;
        }

        var bits = 0.0;
        foreach (var repair in touched)
        {
            bits -= _byRepair[repair] * Math.Log2(_byRepair[repair] / sum);
            _byRepair[repair] = 0;
        }

        return bits / _all;
    }
}
