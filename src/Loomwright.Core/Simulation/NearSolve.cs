using System.Collections.Immutable;
using Loomwright.Parts;

namespace Loomwright.Simulation;

/// <summary>
/// The operating point of a wiring that differs from a healthy one in a few links. Each changed link, and each bent one
/// that feels the change, is an element that sends a correcting current through the healthy network; how large these are
/// is a small system, solved by Newton's method with every curve as it is. Not for two threads at once.
/// </summary>
internal sealed class NearSolve
{
    /// <summary>More elements than this are left to the whole network.</summary>
    private const int Most = 24;

    private static readonly Open Nothing = new();

    // Down the tail of a diode that is cut off a step is as long as its knee.
    private const int MostSteps = 120;
    private const int MostRounds = 6;

    // A bent link whose line errs by less than this across it stays a line; a voltage step below that ends Newton's method.
    private const double SmallErrorVolts = 1e-6;
    private const double SmallVolts = 1e-10;

    // What is left of one below this many times its rounding has too few digits; a pivot below the least hangs on an open contact alone.
    private const double Digits = 1e4;
    private const double Rounding = 1e-15;
    private const double LeastPivot = 1e-11;

    // Held by more than this a point is not held well.
    private const double LittleOhms = 1e4;

    private readonly (int From, int To)[] _rows = new (int, int)[Most];
    private readonly int[] _links = new int[Most];
    private readonly int[] _writes = new int[Most];
    private readonly double[] _amps = new double[Most];
    private readonly double[] _siemens = new double[Most];
    private readonly double[] _volts = new double[Most];
    private readonly Curve[] _curves = new Curve[Most];
    private readonly double[] _step = new double[Most];
    private readonly double[] _sent = new double[Most];
    private readonly double[] _slope = new double[Most];
    private readonly double[] _matrix = new double[Most * Most];
    private readonly double[] _right = new double[Most];
    private readonly double[] _ohms = new double[Most * Most];
    private readonly double[] _answer = new double[Most * Most];
    private bool _answered;
    private NearMoment _moment = null!;
    private ImmutableArray<Link> _healthy;

    /// <summary>How many elements there are; 0 when nothing differs here.</summary>
    public int Count { get; private set; }

    /// <summary>Correcting current of an element, leaving its second row and entering its first.</summary>
    public double Sent(int element) => _sent[element];

    /// <summary>Starts anew on one operating point of a wiring with those links.</summary>
    public void Begin(NearMoment moment, ImmutableArray<Link> healthy)
    {
        _moment = moment;
        _healthy = healthy;
        Count = 0;
        _answered = false;
    }

    /// <summary>A link whose curve, ends, or both differ; false when there are too many.</summary>
    /// <param name="place">Its place in its own wiring.</param>
    /// <param name="before">It in the healthy wiring, at the same place, or null.</param>
    /// <param name="now">It here.</param>
    /// <param name="curve">Its curve here, now.</param>
    public bool Change(int place, Link? before, Link now, Curve curve)
    {
        if (before is null)
        {
            return Add(place, place, now.From, now.To, 0, 0, curve);
        }

        if (before.From == now.From && before.To == now.To)
        {
            return _moment.Curves[place].Equals(curve) || Add(place, place, now.From, now.To, _moment.Amps[place], _moment.Siemens[place], curve);
        }

        return Add(place, -1, before.From, before.To, _moment.Amps[place], _moment.Siemens[place], Nothing)
            && Add(place, place, now.From, now.To, 0, 0, curve);
    }

    /// <summary>Finds the correcting currents; false when they were not found.</summary>
    /// <param name="bound">True where bounds will do: what hangs on an open contact alone is not found to the last digit.</param>
    public bool Solve(bool bound = false)
    {
        for (var round = 0; round < MostRounds; round++)
        {
            if (!Newton(bound))
            {
                return false;
            }

            if (!FindBent(out var found))
            {
                return false;
            }

            if (!found)
            {
                return true;
            }
        }

        return false;
    }

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
    public double Volts(int row)
    {
        var volts = 0.0;
        for (var e = 0; e < Count; e++)
        {
            volts += _sent[e] * (_moment.Ohms(_rows[e].From, row) - _moment.Ohms(_rows[e].To, row));
        }

        return volts;
    }

    /// <summary>Adds to potentials by row.</summary>
    public void AddVolts(Span<double> rows)
    {
        for (var e = 0; e < Count; e++)
        {
            var from = _moment.Row(_rows[e].From);
            var to = _moment.Row(_rows[e].To);
            var sent = _sent[e];
            for (var k = 0; k < rows.Length; k++)
            {
                rows[k] += sent * (from[k] - to[k]);
            }
        }
    }

    /// <summary>Puts right what is carried by the elements: it is not what the healthy lines say.</summary>
    public void PutRight(Span<double> amps, Span<double> squareVolts, ReadOnlySpan<double> rows)
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
                var moved = rows[_moment.Rows[from]] - rows[_moment.Rows[to]];
                lineAmps = _moment.Amps[place] + (_moment.Siemens[place] * moved);
                lineVolts = _moment.Volts[from] - _moment.Volts[to] + moved;
            }

            var volts = _volts[e] + _step[e];
            amps[place] += _moment.Share * (_curves[e].At(volts).Amps - lineAmps);
            squareVolts[place] += _moment.Share * ((volts * volts) - (lineVolts * lineVolts));
        }
    }

    /// <summary>Ohms from a row to the reference with the changes in.</summary>
    public double OhmsToReference(int row)
    {
        if (Count > 0 && !_answered)
        {
            FindAnswer();
        }

        for (var e = 0; e < Count; e++)
        {
            _right[e] = _moment.Ohms(_rows[e].From, row) - _moment.Ohms(_rows[e].To, row);
        }

        var ohms = _moment.Ohms(row, row);
        for (var e = 0; e < Count; e++)
        {
            var volts = 0.0;
            for (var o = 0; o < Count; o++)
            {
                volts += _answer[(e * Most) + o] * _right[o];
            }

            ohms += _slope[e] * _right[e] * volts;
        }

        return Math.Max(ohms, 0);
    }

    // What the voltages over the elements come to when one amp elsewhere would make them each one volt by itself.
    private void FindAnswer()
    {
        for (var e = 0; e < Count; e++)
        {
            Array.Clear(_right, 0, Count);
            _right[e] = 1;
            FillMatrix();
            SmallSystem(bound: true);
            for (var o = 0; o < Count; o++)
            {
                _answer[(o * Most) + e] = _right[o];
            }
        }

        _answered = true;
    }

    private bool Add(int place, int writes, int from, int to, double amps, double siemens, Curve curve)
    {
        if (Count == Most || curve is FixedVoltage or FixedCurrent || (place < _moment.Curves.Length && _moment.Curves[place] is FixedVoltage or FixedCurrent))
        {
            return false;
        }

        var e = Count++;
        (_links[e], _writes[e]) = (place, writes);
        _rows[e] = (_moment.Rows[from], _moment.Rows[to]);
        (_amps[e], _siemens[e], _curves[e]) = (amps, siemens, curve);
        _volts[e] = _moment.Volts[from] - _moment.Volts[to];
        _step[e] = 0;
        for (var o = 0; o <= e; o++)
        {
            _ohms[(e * Most) + o] = _ohms[(o * Most) + e] =
                _moment.Ohms(_rows[e].From, _rows[o].From) - _moment.Ohms(_rows[e].From, _rows[o].To) - _moment.Ohms(_rows[e].To, _rows[o].From) + _moment.Ohms(_rows[e].To, _rows[o].To);
        }

        return true;
    }

    // Solves step = ohms · sent(step), where sent is what the healthy line carries less what the curve now carries.
    private bool Newton(bool bound)
    {
        for (var round = 0; round < MostSteps; round++)
        {
            for (var e = 0; e < Count; e++)
            {
                var point = _curves[e].Straight is { } line ? line.At(_volts[e] + _step[e]) : _curves[e].At(_volts[e] + _step[e]);
                _sent[e] = _amps[e] + (_siemens[e] * _step[e]) - point.Amps;
                _slope[e] = _siemens[e] - point.Siemens;
            }

            var largest = 0.0;
            for (var e = 0; e < Count; e++)
            {
                var off = -_step[e];
                for (var o = 0; o < Count; o++)
                {
                    off += _ohms[(e * Most) + o] * _sent[o];
                }

                _right[e] = off;
            }

            FillMatrix();
            if ((!bound && LosesDigits()) || !SmallSystem(bound))
            {
                return false;
            }

            for (var e = 0; e < Count; e++)
            {
                _step[e] += _right[e];
                largest = Math.Max(largest, Math.Abs(_right[e]) / (1 + Math.Abs(_volts[e] + _step[e])));
            }

            if (!double.IsFinite(largest))
            {
                return false;
            }

            // Of straight lines the first step is the answer; another would only turn over the rounding of a small pivot.
            if (largest < SmallVolts || (bound && AllStraight()))
            {
                return Sends();
            }
        }

        return false;
    }

    // Taking a stiff link out of what hangs on little leaves next to nothing of one: too few digits to go on with.
    private bool LosesDigits()
    {
        for (var e = 0; e < Count; e++)
        {
            var slope = Math.Abs(_slope[e]);
            var ohms = Math.Max(_moment.Ohms(_rows[e].From, _rows[e].From), _moment.Ohms(_rows[e].To, _rows[e].To));
            if (Math.Abs(1 - (_ohms[(e * Most) + e] * _slope[e])) < Digits * Rounding * slope * ohms)
            {
                return true;
            }
        }

        return false;
    }

    private bool AllStraight()
    {
        for (var e = 0; e < Count; e++)
        {
            if (_curves[e].Straight is null)
            {
                return false;
            }
        }

        return true;
    }

    private bool Sends()
    {
        for (var e = 0; e < Count; e++)
        {
            var point = _curves[e].Straight is { } line ? line.At(_volts[e] + _step[e]) : _curves[e].At(_volts[e] + _step[e]);
            _sent[e] = _amps[e] + (_siemens[e] * _step[e]) - point.Amps;
            _slope[e] = _siemens[e] - point.Siemens;
        }

        return true;
    }

    // I − ohms · slope.
    private void FillMatrix()
    {
        for (var e = 0; e < Count; e++)
        {
            for (var o = 0; o < Count; o++)
            {
                _matrix[(e * Most) + o] = (e == o ? 1 : 0) - (_ohms[(e * Most) + o] * _slope[o]);
            }
        }
    }

    private bool SmallSystem(bool bound)
    {
        for (var k = 0; k < Count; k++)
        {
            var best = k;
            for (var r = k + 1; r < Count; r++)
            {
                best = Math.Abs(_matrix[(r * Most) + k]) > Math.Abs(_matrix[(best * Most) + k]) ? r : best;
            }

            if (Math.Abs(_matrix[(best * Most) + k]) < LeastPivot)
            {
                if (!bound)
                {
                    return false;
                }

                _matrix[(best * Most) + k] = LeastPivot;
            }

            if (best != k)
            {
                (_right[k], _right[best]) = (_right[best], _right[k]);
                for (var c = k; c < Count; c++)
                {
                    (_matrix[(k * Most) + c], _matrix[(best * Most) + c]) = (_matrix[(best * Most) + c], _matrix[(k * Most) + c]);
                }
            }

            for (var r = k + 1; r < Count; r++)
            {
                var share = _matrix[(r * Most) + k] / _matrix[(k * Most) + k];
                if (share == 0)
                {
                    continue;
                }

                for (var c = k + 1; c < Count; c++)
                {
                    _matrix[(r * Most) + c] -= share * _matrix[(k * Most) + c];
                }

                _right[r] -= share * _right[k];
            }
        }

        for (var k = Count - 1; k >= 0; k--)
        {
            for (var c = k + 1; c < Count; c++)
            {
                _right[k] -= _matrix[(k * Most) + c] * _right[c];
            }

            _right[k] /= _matrix[(k * Most) + k];
        }

        return true;
    }

    // Bent links whose line no longer tells their current become elements too.
    private bool FindBent(out bool found)
    {
        found = false;
        foreach (var l in _moment.Bent)
        {
            var link = _healthy[l];
            var (from, to) = (_moment.Rows[link.From], _moment.Rows[link.To]);
            var moved = Volts(from) - Volts(to);
            if (Math.Abs(moved) < 1e-9 || Array.IndexOf(_links, l, 0, Count) >= 0)
            {
                continue;
            }

            var volts = _moment.Volts[link.From] - _moment.Volts[link.To];
            var off = _moment.Curves[l].At(volts + moved).Amps - _moment.Amps[l] - (_moment.Siemens[l] * moved);
            var ohms = _moment.Ohms(from, from) - (2 * _moment.Ohms(from, to)) + _moment.Ohms(to, to);
            if (Math.Abs(off) * ohms > SmallErrorVolts)
            {
                found = true;
                if (!Add(l, l, link.From, link.To, _moment.Amps[l], _moment.Siemens[l], _moment.Curves[l]))
                {
                    return false;
                }

                _step[Count - 1] = moved;
            }
        }

        return true;
    }
}
