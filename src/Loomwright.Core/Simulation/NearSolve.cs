using System.Collections.Immutable;
using Loomwright.Parts;

namespace Loomwright.Simulation;

/// <summary>
/// The operating point of a wiring that differs from a healthy one in a few links. Each changed link, and each bent one
/// that feels the change, is an element that sends a correcting current through the healthy network; how large these are
/// is a small system, solved by Newton's method with every curve as it is. Not for two threads at once.
/// </summary>
internal sealed partial class NearSolve
{
    /// <summary>More elements than this are left to the whole network.</summary>
    private const int Most = 24;

    private static readonly Open Nothing = new();

    // Down the tail of a diode that is cut off a step is as long as its knee: what is still on its way after some steps
    // begins anew at 0 V.
    private const int MostSteps = 30;
    private const int StepsFromBefore = 4;
    private const int MostRounds = 6;

    // A bent link whose line errs by less than these across it stays a line: by the volts its current is wrong by, and by
    // the ohms its slope is (10 Ω behind a meter of 10 MΩ are a millionth of what it shows).
    private const double SmallErrorVolts = 1e-6;
    private const double SmallErrorOhms = 10;
    private const double LeastShare = 1e-9;

    // A voltage step below this ends Newton's method; so does one that is no smaller than that before it where rounding is
    // all there is: what hangs on next to nothing keeps few digits.
    private const double SmallVolts = 1e-10;
    private const double RoundedVolts = 1e-5;
    private const double FarVolts = 1e-3;

    // What is left of one below this many times its rounding has too few digits.
    private const double Digits = 1e4;
    private const double Rounding = 1e-15;

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
    private readonly double[] _ohms = new double[Most * Most];
    private readonly SmallSystem _system = new(Most);
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
        _ready = NotReady;
        if (_moved.Length != moment.RowCount)
        {
            _moved = new double[moment.RowCount];
        }
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
        FindOhms(e);
        return true;
    }

    // Between an element and all before it.
    private void FindOhms(int e)
    {
        for (var o = 0; o <= e; o++)
        {
            _ohms[(e * Most) + o] = _ohms[(o * Most) + e] =
                _moment.Ohms(_rows[e].From, _rows[o].From) - _moment.Ohms(_rows[e].From, _rows[o].To) - _moment.Ohms(_rows[e].To, _rows[o].From) + _moment.Ohms(_rows[e].To, _rows[o].To);
        }
    }

    // Solves step = ohms · sent(step), where sent is what the healthy line carries less what the curve now carries.
    private bool Newton(bool bound)
    {
        var before = double.PositiveInfinity;
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

                _system.Right[e] = off;
            }

            FillMatrix();
            if ((!bound && LosesDigits()) || !_system.Solve(Count, bound))
            {
                return false;
            }

            for (var e = 0; e < Count; e++)
            {
                var falls = round == StepsFromBefore && _curves[e].Straight is null && Math.Abs(_system.Right[e]) > FarVolts;
                _step[e] = falls ? -_volts[e] : _step[e] + _system.Right[e];
                largest = Math.Max(largest, Math.Abs(_system.Right[e]) / (1 + Math.Abs(_volts[e] + _step[e])));
            }

            if (!double.IsFinite(largest))
            {
                return false;
            }

            // Of straight lines the first step is the answer; another would only turn over the rounding of a small pivot.
            if (largest < SmallVolts || (largest < RoundedVolts && largest >= before) || (bound && AllStraight()))
            {
                return Sends();
            }

            before = largest;
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
        _ready = NotReady;
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
                _system[e, o] = (e == o ? 1 : 0) - (_ohms[(e * Most) + o] * _slope[o]);
            }
        }
    }

    // Bent links whose line no longer tells their current become elements too.
    private bool FindBent(out bool found)
    {
        found = false;
        FindVolts();
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
            var (amps, siemens) = _moment.Curves[l].At(volts + moved);
            var offAmps = Math.Abs(amps - _moment.Amps[l] - (_moment.Siemens[l] * moved));
            var offSiemens = siemens - _moment.Siemens[l];

            // Nothing across a link is more than the link itself; how much less it is hangs on the changes too: what was held
            // well may hang on next to nothing now.
            if (Matters(offAmps, offSiemens, 1 / Math.Min(siemens, _moment.Siemens[l])) && Matters(offAmps, offSiemens, OhmsAcross(from, to, offSiemens)))
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

    private static bool Matters(double offAmps, double offSiemens, double ohms) =>
        !(offAmps * ohms <= SmallErrorVolts && Math.Abs(offSiemens) * ohms * ohms <= SmallErrorOhms);

    // With the changes in, and the link itself by its slope now.
    private double OhmsAcross(int from, int to, double moreSiemens)
    {
        var ohms = Ohms(from, to);
        return ohms / Math.Max(1 + (moreSiemens * ohms), LeastShare);
    }
}
