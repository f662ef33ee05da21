using System.Collections.Immutable;

namespace Loomwright.Diagnosis;

/// <summary>What a meter would read under each of the hypotheses that matter. Not for two threads at once.</summary>
internal sealed class Readings(ImmutableArray<Hypothesis> all, int[] live)
{
    private readonly ToldApart _apart = new();
    private readonly double[] _volts = new double[live.Length];

    // By point, one hypothesis behind the other.
    private double[] _byPoint = [];
    private double _amps;
    private int _stimulus;

    /// <summary>From now on after that stimulus.</summary>
    public void At(int stimulus)
    {
        _stimulus = stimulus;
        _amps = live.Average(e => Math.Abs(all[e].Looks[stimulus].SupplyAmps));
        var points = live.Max(e => all[e].Looks[stimulus].Volts.Length);
        _byPoint = _byPoint.Length == points * live.Length ? _byPoint : new double[points * live.Length];
        for (var i = 0; i < live.Length; i++)
        {
            var row = all[live[i]].Looks[stimulus].Volts;
            for (var p = 0; p < points; p++)
            {
                _byPoint[(p * live.Length) + i] = row.IsEmpty ? 0 : row[p];
            }
        }
    }

    /// <summary>Numbers the readings between two points from 0, those that a meter does not tell apart alike; how many numbers there are.</summary>
    public int Number(int red, int? black, Span<int> groups)
    {
        if (_byPoint.Length == 0)
        {
            groups.Clear();
            return 1;
        }

        var of = _byPoint.AsSpan(red * live.Length, live.Length);
        if (black is { } point)
        {
            var other = _byPoint.AsSpan(point * live.Length, live.Length);
            for (var i = 0; i < live.Length; i++)
            {
                // Where nothing holds a lead it may read as if nothing were there.
                _volts[i] = Likelihood.IsLoose(all[live[i]].Looks[_stimulus], red, black) ? 0 : of[i] - other[i];
            }

            of = _volts;
        }

        return _apart.Number(of, _amps, groups);
    }
}
