using System.Collections.Immutable;

namespace Loomwright.Diagnosis;

/// <summary>What a meter would read under each of the hypotheses that matter. Not for two threads at once.</summary>
internal sealed class Readings(ImmutableArray<Hypothesis> all, int[] live)
{
    private readonly ToldApart _apart = new();
    private readonly double[] _volts = new double[live.Length];
    private readonly ImmutableArray<double>[] _rows = new ImmutableArray<double>[live.Length];
    private double _amps;

    /// <summary>From now on after that stimulus.</summary>
    public void At(int stimulus)
    {
        _amps = Math.Abs(all[live[0]].Looks[stimulus].SupplyAmps);
        for (var i = 0; i < live.Length; i++)
        {
            _rows[i] = all[live[i]].Looks[stimulus].Volts;
        }
    }

    /// <summary>Numbers the readings between two points from 0, those that a meter does not tell apart alike; how many numbers there are.</summary>
    public int Number(int red, int? black, Span<int> groups)
    {
        for (var i = 0; i < live.Length; i++)
        {
            _volts[i] = _rows[i].IsEmpty ? 0 : _rows[i][red] - (black is { } b ? _rows[i][b] : 0);
        }

        return _apart.Number(_volts, _amps, groups);
    }
}
