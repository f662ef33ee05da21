using System.Numerics;

namespace Loomwright.Simulation;

/// <content>What the correcting currents found come to in the network.</content>
internal sealed partial class NearSolve
{
    // Held by more than this a point is not held well.
    private const double LittleOhms = 1e4;
    private const int NotReady = -1;

    private readonly double[] _across = new double[Most];

    // How many elements the system stands ready for: those that are found on the way wait for the next round.
    private int _ready;
    private double[] _moved = [];

    /// <summary>What an element carries now; null for a link that is none.</summary>
    public double? Amps(int place)
    {
        for (var e = 0; e < Count; e++)
        {
            if (_writes[e] == place)
            {
                return _curves[e].At(_volts[e] + _step[e]).Amps;
            }
        }

        return null;
    }

    /// <summary>Whether a row that hangs on little is joined to an element through less than that: bounds say nothing there.</summary>
    public bool HangsWith(int row)
    {
        for (var e = 0; e < Count && _moment.Ohms(row, row) > LittleOhms; e++)
        {
            if (_moment.Ohms(_rows[e].From, row) > LittleOhms || _moment.Ohms(_rows[e].To, row) > LittleOhms)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>By how much a row's potential differs.</summary>
    public double Volts(int row) => _moved[row];

    /// <summary>By how much every row's potential differs.</summary>
    public ReadOnlySpan<double> Volts() => _moved;

    private void FindVolts()
    {
        var moved = _moved.AsSpan();
        moved.Clear();
        for (var e = 0; e < Count; e++)
        {
            var from = _moment.Row(_rows[e].From);
            var to = _moment.Row(_rows[e].To);
            var sent = _sent[e];
            var k = 0;
            for (; k <= moved.Length - Vector<double>.Count; k += Vector<double>.Count)
            {
                (new Vector<double>(moved[k..]) + (sent * (new Vector<double>(from[k..]) - new Vector<double>(to[k..])))).CopyTo(moved[k..]);
            }

            for (; k < moved.Length; k++)
            {
                moved[k] += sent * (from[k] - to[k]);
            }
        }
    }

    /// <summary>Puts right what is carried by the elements: it is not what the healthy lines say.</summary>
    public void PutRight(Span<double> amps, Span<double> squareVolts)
    {
        for (var e = 0; e < Count; e++)
        {
            var place = _writes[e];
            if (place < 0)
            {
                continue;
            }

            var (lineAmps, lineVolts) = (0.0, 0.0);
            if (place < _healthy.Length)
            {
                var (from, to) = (_healthy[place].From, _healthy[place].To);
                var moved = _moved[_moment.Rows[from]] - _moved[_moment.Rows[to]];
                lineAmps = _moment.Amps[place] + (_moment.Siemens[place] * moved);
                lineVolts = _moment.Volts[from] - _moment.Volts[to] + moved;
            }

            var volts = _volts[e] + _step[e];
            amps[place] += _moment.Share * (_curves[e].At(volts).Amps - lineAmps);
            squareVolts[place] += _moment.Share * ((volts * volts) - (lineVolts * lineVolts));
        }
    }

    /// <summary>What the ohms to the reference can be found from later on.</summary>
    public Slopes Found() => new(_moment, [.. _rows.AsSpan(0, Count)], [.. _slope.AsSpan(0, Count)]);

    /// <summary>Takes back what was found before, for the ohms to the reference alone.</summary>
    public void Take(Slopes found)
    {
        (_moment, Count, _ready) = (found.Moment, found.Siemens.Length, NotReady);
        found.Rows.CopyTo(_rows, 0);
        found.Siemens.CopyTo(_slope, 0);
        for (var e = 0; e < Count; e++)
        {
            FindOhms(e);
        }
    }

    /// <summary>Ohms from a row to the reference with the changes in.</summary>
    public double OhmsToReference(int row) => Ohms(row, _moment.RowCount - 1);

    private double Ohms(int one, int other)
    {
        if (_ready == NotReady)
        {
            FillMatrix();
            _system.Factor(Count, bound: true);
            _ready = Count;
        }

        // What one amp from one to the other does across each element by itself, then with all of them as they are.
        var across = _across.AsSpan(0, _ready);
        for (var e = 0; e < across.Length; e++)
        {
            var (from, to) = _rows[e];
            across[e] = _moment.Ohms(from, one) - _moment.Ohms(to, one) - _moment.Ohms(from, other) + _moment.Ohms(to, other);
        }

        across.CopyTo(_system.Right);
        _system.Substitute(_ready);
        var ohms = _moment.Ohms(one, one) - (2 * _moment.Ohms(one, other)) + _moment.Ohms(other, other);
        for (var e = 0; e < across.Length; e++)
        {
            ohms += _slope[e] * across[e] * _system.Right[e];
        }

        return Math.Max(ohms, 0);
    }

    /// <summary>By how much the slope of each element differs from the healthy line's.</summary>
    internal sealed record Slopes(NearMoment Moment, (int From, int To)[] Rows, double[] Siemens);
}
