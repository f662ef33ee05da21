namespace Loomwright.Network;

/// <content>What flows at the present potentials, and how far a step goes.</content>
internal sealed partial class Equations
{
    /// <summary>Currents and slopes of all branches, and the current sums, at the present potentials.</summary>
    public void Evaluate(Span<double> amps)
    {
        RefreshOffsets();
        _sums.Clear();
        var ends = _ends.AsSpan();
        var lines = _lines.AsSpan(0, ends.Length);
        var bends = _bends.AsSpan(0, ends.Length);
        var offsets = _offsetVolts.AsSpan(0, ends.Length);
        var volts = _volts.AsSpan(0, ends.Length);
        var siemens = _siemens.AsSpan(0, ends.Length);
        amps = amps[..ends.Length];
        for (var b = 0; b < ends.Length; b++)
        {
            var (from, to, _) = ends[b];
            volts[b] = _potentials.Volts(from, to, offsets[b]);
            var point = bends[b] ? _curves[b].At(volts[b]) : lines[b].At(volts[b]);
            amps[b] = point.Amps;
            siemens[b] = point.Siemens;
            _sums.Leave(from, point.Amps);
            _sums.Leave(to, -point.Amps);
        }
    }

    /// <summary>Marks where the next steps start.</summary>
    public void Mark(ReadOnlySpan<double> amps)
    {
        _potentials.Mark();
        for (var k = 0; k < _markedSums.Length; k++)
        {
            _markedSums[k] = _sums[k];
        }

        foreach (var b in Bent)
        {
            _markedBends[b] = (amps[b], _siemens[b]);
        }
    }

    /// <summary>
    /// Current sums and slopes at the mark plus a part of Newton's step, without the last digits and without the currents
    /// of what is straight: there the sums shrink by that part, so only what bends has to be looked at.
    /// </summary>
    public void EvaluateBends(ReadOnlySpan<double> stepVolts, double part, Span<double> amps)
    {
        _sums.Clear();
        for (var k = 0; k < _markedSums.Length; k++)
        {
            _sums.Leave(k, (1 - part) * _markedSums[k]);
        }

        foreach (var b in Bent)
        {
            var (from, to, _) = _ends[b];
            _volts[b] = VoltsAt(b);
            var point = _curves[b].At(_volts[b]);
            var (markedAmps, markedSiemens) = _markedBends[b];
            var bent = point.Amps - markedAmps - (part * markedSiemens * (At(stepVolts, from) - At(stepVolts, to)));
            amps[b] = point.Amps;
            _siemens[b] = point.Siemens;
            _sums.Leave(from, bent);
            _sums.Leave(to, -bent);
        }
    }

    /// <summary>The largest part of a step over any bent branch, against 1 V and what stands there.</summary>
    public double LargestOverBends(ReadOnlySpan<double> stepVolts)
    {
        var most = 0.0;
        foreach (var b in Bent)
        {
            most = Math.Max(most, Math.Abs(At(stepVolts, _ends[b].From) - At(stepVolts, _ends[b].To)) / (1 + Math.Abs(_volts[b])));
        }

        return most;
    }

    /// <summary>Largest current sum left at any place at the last evaluation, the reference included; a node inside a joint counts with its joint.</summary>
    public double LeftAmps
    {
        get
        {
            var most = 0.0;
            for (var k = 0; k <= Unknowns; k++)
            {
                most = Math.Max(most, Math.Abs(_sums[k]));
            }

            return most;
        }
    }

    /// <summary>Slope of the co-content along a step, in watts per whole step: negative while it still falls.</summary>
    public double ContentSlope(ReadOnlySpan<double> stepVolts)
    {
        var watts = 0.0;
        for (var k = 0; k < stepVolts.Length; k++)
        {
            watts += _sums[k] * stepVolts[k];
        }

        return watts;
    }

    /// <summary>Slope of that slope, in watts; never negative.</summary>
    public double ContentCurvature(ReadOnlySpan<double> stepVolts)
    {
        var watts = 0.0;
        for (var b = 0; b < _ends.Length; b++)
        {
            var volts = At(stepVolts, _ends[b].From) - At(stepVolts, _ends[b].To);
            watts += _siemens[b] * volts * volts;
        }

        return watts;
    }

    /// <summary>
    /// Whether a step is so small that the next would be lost in rounding: Newton's error goes with the square of the
    /// voltage step over each bent curve, and a straight network needs one step after its first.
    /// </summary>
    public bool IsSmall(ReadOnlySpan<double> stepVolts)
    {
        const double small = 1e-9;
        for (var k = 0; k < stepVolts.Length; k++)
        {
            // Written so that a step that is not a number counts as large.
            if (!(Math.Abs(stepVolts[k]) <= small * (1 + Math.Abs(_potentials[k]))))
            {
                return false;
            }
        }

        return LargestOverBends(stepVolts) <= small;
    }

    private static double At(ReadOnlySpan<double> volts, int place) => place < volts.Length ? volts[place] : 0;

    /// <summary>Slope of every branch at the last evaluation.</summary>
    public ReadOnlySpan<double> Siemens => _siemens;
}
