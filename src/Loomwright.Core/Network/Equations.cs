using Loomwright.Parts;

namespace Loomwright.Network;

/// <summary>
/// A circuit laid out for solving: which unknown each branch end belongs to, where its conductance is kept, what
/// every branch does at the present potentials. Valid as long as the same branches are ideal voltage sources.
/// </summary>
internal sealed partial class Equations
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

    /// <summary>Writes the potential of every node.</summary>
    public void NodePotentials(Span<double> volts)
    {
        for (var n = 0; n < volts.Length; n++)
        {
            volts[n] = _potentials[Place[n]] + _nodeOffsetVolts[n];
        }
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
