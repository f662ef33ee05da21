using Loomwright.Parts;

namespace Loomwright.Network;

/// <summary>
/// A circuit laid out for solving: which unknown each branch end belongs to, where its conductance is kept, what
/// every branch does at the present potentials. Valid as long as the same branches are ideal voltage sources.
/// </summary>
internal sealed class Equations
{
    private const int NoSlot = int.MinValue;

    private readonly Circuit _circuit;
    private readonly Curve[] _curves;
    private readonly Elimination _order;
    private readonly Factors _factors;
    private readonly CurrentSums _sums;
    private readonly Potentials _potentials;
    private readonly double[] _nodeOffsetVolts;
    private readonly (int From, int To, int Slot)[] _ends;
    private readonly double[] _offsetVolts;
    private readonly Line[] _lines;
    private readonly bool[] _bends;
    private readonly bool[] _cornered;
    private readonly List<int> _bent = [];
    private readonly (double Amps, double Siemens)[] _markedBends;
    private readonly double[] _markedSums;
    private readonly double[] _volts;
    private readonly double[] _siemens;
    private readonly double[] _transferOhms;
    private int _eliminated;
    private bool _linesChanged = true;
    private bool _bendsChanged = true;
    private bool _offsetsChanged = true;

    public Equations(Circuit circuit, Curve[] curves)
    {
        _circuit = circuit;
        _curves = curves;
        Joints = new(circuit, curves);
        var unknown = new int[circuit.NodeCount];
        unknown[0] = -1;
        for (var n = 1; n < unknown.Length; n++)
        {
            unknown[n] = Joints.Head[n] == n ? Unknowns++ : unknown[Joints.Head[n]];
        }

        var edges = new List<(int, int)>();
        var straight = Enumerable.Repeat(true, Unknowns).ToArray();
        for (var b = 0; b < curves.Length; b++)
        {
            var (from, to) = (unknown[circuit.Branches[b].From], unknown[circuit.Branches[b].To]);
            if (from != to && from >= 0 && to >= 0)
            {
                edges.Add((from, to));
            }

            var bends = curves[b].Stretch(0) is null && curves[b] is not FixedVoltage;
            if (bends && from >= 0)
            {
                straight[from] = false;
            }

            if (bends && to >= 0)
            {
                straight[to] = false;
            }
        }

        _order = new(Unknowns, edges, straight);
        _factors = new(_order);
        _sums = new(Unknowns + 1);
        _potentials = new(Unknowns);
        Place = [.. unknown.Select(u => u < 0 ? Unknowns : _order.Place[u])];
        _ends = [.. circuit.Branches.Select(branch => Ends(Place[branch.From], Place[branch.To]))];
        _nodeOffsetVolts = new double[circuit.NodeCount];
        _offsetVolts = new double[curves.Length];
        _lines = new Line[curves.Length];
        _bends = new bool[curves.Length];
        _cornered = new bool[curves.Length];
        _markedBends = new (double, double)[curves.Length];
        _markedSums = new double[Unknowns];
        _volts = new double[curves.Length];
        _siemens = new double[curves.Length];
        _transferOhms = new double[_factors.SlotCount];
        for (var b = 0; b < curves.Length; b++)
        {
            Changed(b);
        }
    }

    public Joints Joints { get; }

    /// <summary>Independent potentials.</summary>
    public int Unknowns { get; }

    /// <summary>Branches whose curve bends.</summary>
    public int BendCount { get; private set; }

    /// <summary>The place of each node in the order of elimination; the last one is the reference's.</summary>
    public int[] Place { get; }

    public Potentials Potentials => _potentials;

    /// <summary>A branch has another curve now.</summary>
    public void Changed(int branch)
    {
        var curve = _curves[branch];
        var stretch = curve.Stretch(_volts[branch]);
        _cornered[branch] = stretch is not null && curve.Straight is null;
        _offsetsChanged |= curve is FixedVoltage;
        Take(branch, stretch ?? default, bends: stretch is null && curve is not FixedVoltage);
    }

    /// <summary>
    /// Takes every curve made of straight stretches for the one it is on at the present potentials. False when all were
    /// taken for that already: then the answer for the stretches is the answer for the curves.
    /// </summary>
    public bool TakeStretches()
    {
        RefreshOffsets();
        var changed = false;
        for (var b = 0; b < _cornered.Length; b++)
        {
            if (_cornered[b] && _curves[b].Stretch(VoltsAt(b)) is { } stretch && (_bends[b] || stretch != _lines[b]))
            {
                Take(b, stretch, bends: false);
                changed = true;
            }
        }

        return changed;
    }

    /// <summary>Takes every curve made of straight stretches for a bent one, until the next <see cref="TakeStretches"/>.</summary>
    public void BendAtCorners()
    {
        for (var b = 0; b < _cornered.Length; b++)
        {
            if (_cornered[b])
            {
                Take(b, default, bends: true);
            }
        }
    }

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

    /// <summary>Eliminates with the slopes of the last evaluation; does only what changed since the last time.</summary>
    public void Factor()
    {
        if (_linesChanged)
        {
            FactorLines();
        }
        else if (BendCount == 0)
        {
            return;
        }

        _factors.Restore();
        foreach (var b in Bent)
        {
            if (_ends[b].Slot != NoSlot)
            {
                _factors.Add(_ends[b].Slot, _siemens[b]);
            }
        }

        _factors.Eliminate(_eliminated, Unknowns);
    }

    /// <summary>The step that would bring every current sum to zero if no curve bent.</summary>
    public void NewtonStep(Span<double> stepVolts)
    {
        for (var k = 0; k < stepVolts.Length; k++)
        {
            stepVolts[k] = -_sums[k];
        }

        _factors.Solve(stepVolts);
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

    private List<int> Bent
    {
        get
        {
            if (_bendsChanged)
            {
                _bent.Clear();
                for (var b = 0; b < _bends.Length; b++)
                {
                    if (_bends[b])
                    {
                        _bent.Add(b);
                    }
                }

                _bendsChanged = false;
            }

            return _bent;
        }
    }

    private double VoltsAt(int branch) => _potentials.Volts(_ends[branch].From, _ends[branch].To, _offsetVolts[branch]);

    private void Take(int branch, Line line, bool bends)
    {
        _linesChanged |= bends != _bends[branch] || line.Siemens != _lines[branch].Siemens;
        _bendsChanged |= bends != _bends[branch];
        BendCount += (bends ? 1 : 0) - (_bends[branch] ? 1 : 0);
        _bends[branch] = bends;
        _lines[branch] = line;
    }

    private static double At(ReadOnlySpan<double> volts, int place) => place < volts.Length ? volts[place] : 0;

    /// <summary>Resistance from each place to the reference at the present slopes.</summary>
    public void ResistanceToReference(Span<double> ohms)
    {
        Factor();
        _factors.ResistanceToReference(ohms, _transferOhms);
    }

    /// <summary>Begins at these node potentials, or at 0 V everywhere when there are none.</summary>
    public void StartFrom(ReadOnlySpan<double> nodeVolts)
    {
        _potentials.Clear();
        for (var n = 0; n < nodeVolts.Length; n++)
        {
            if (Joints.Head[n] == n && Place[n] < Unknowns)
            {
                _potentials.Set(Place[n], nodeVolts[n]);
            }
        }
    }

    /// <summary>Slope of every branch at the last evaluation.</summary>
    public ReadOnlySpan<double> Siemens => _siemens;

    /// <summary>Potentials of all places that one amp into each would give, row by row; one more row and column for the reference.</summary>
    public void TransferOhms(Span<double> ohms)
    {
        Factor();
        ohms.Clear();
        for (var k = 0; k < Unknowns; k++)
        {
            var row = ohms.Slice(k * (Unknowns + 1), Unknowns);
            row[k] = 1;
            _factors.Solve(row, k);
        }
    }

    /// <summary>Writes the potential of every node.</summary>
    public void NodePotentials(Span<double> volts)
    {
        for (var n = 0; n < volts.Length; n++)
        {
            volts[n] = _potentials[Place[n]] + _nodeOffsetVolts[n];
        }
    }

    // Straight branches once; of the collapsed places only those that no bent branch has come to since.
    private void FactorLines()
    {
        _factors.Clear();
        _eliminated = _order.CollapsedCount;
        for (var b = 0; b < _bends.Length; b++)
        {
            if (_ends[b].Slot == NoSlot)
            {
                continue;
            }

            if (_bends[b])
            {
                _eliminated = Math.Min(_eliminated, Math.Min(_ends[b].From, _ends[b].To));
            }
            else if (_curves[b] is not FixedVoltage)
            {
                _factors.Add(_ends[b].Slot, _lines[b].Siemens);
            }
        }

        _factors.Eliminate(0, _eliminated);
        _factors.Save(_eliminated);
        _linesChanged = false;
    }

    private void RefreshOffsets()
    {
        if (!_offsetsChanged)
        {
            return;
        }

        Joints.Offsets(_curves, _nodeOffsetVolts);
        for (var b = 0; b < _offsetVolts.Length; b++)
        {
            _offsetVolts[b] = _nodeOffsetVolts[_circuit.Branches[b].From] - _nodeOffsetVolts[_circuit.Branches[b].To];
        }

        _offsetsChanged = false;
    }

    private (int From, int To, int Slot) Ends(int from, int to)
    {
        var slot = from == to ? NoSlot
            : from == Unknowns ? ~to
            : to == Unknowns ? ~from
            : _order.Slot(from, to);
        return (from, to, slot);
    }
}
