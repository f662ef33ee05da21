using System.Collections.Immutable;
using Loomwright.Parts;

namespace Loomwright.Network;

/// <summary>
/// Finds the operating point of a circuit. Laid out once; curves can be replaced between solves, and a solve with
/// curves that exist already allocates nothing. The spans show the last solve and are overwritten by the next.
/// Not for two threads at once.
/// </summary>
/// <remarks>
/// Every curve is continuous and rises, so the co-content (the sum of ∫ i dv) is strictly convex and has one lowest
/// point. Newton's step always points downhill on it, and a step that overshoots is shortened: no stepping of sources
/// or leaks is needed. One more step than necessary is made: it brings the digits that a plain potential cannot hold.
/// </remarks>
public sealed class Solver
{
    /// <summary>Below this conductance to the reference, S, a node is called floating.</summary>
    public const double FloatingSiemens = 1e-6;

    private const int MostSteps = 200;

    // One battery is on the right stretch after one correction; several could pass the wrong one on among themselves.
    private const int MostCorrections = 3;

    private readonly Circuit _circuit;
    private readonly Curve[] _curves;
    private readonly Islands _islands;
    private readonly CurrentSums _nodeSums;
    private readonly double[] _potentials;
    private readonly double[] _amps;
    private readonly bool[] _floating;
    private Equations _equations;
    private double[] _step;
    private bool _layoutChanged;
    private bool _pathsChanged = true;
    private bool _floatingKnown;
    private bool _exact;

    /// <summary>Lays the circuit out.</summary>
    public Solver(Circuit circuit)
    {
        _circuit = circuit;
        _curves = [.. circuit.Branches.Select(branch => branch.Curve)];
        _islands = new(circuit);
        _nodeSums = new(circuit.NodeCount);
        _potentials = new double[circuit.NodeCount];
        _floating = new bool[circuit.NodeCount];
        _amps = new double[_curves.Length];
        _equations = new(circuit, _curves);
        _step = new double[_equations.Unknowns];
    }

    /// <summary>Volts at each node against node 0. A part without any path to the reference rests with its lowest-numbered node at 0 V.</summary>
    public ReadOnlySpan<double> Potentials => _potentials;

    /// <summary>Current through each branch, from → to. More exact than a difference of two potentials over a small resistance.</summary>
    public ReadOnlySpan<double> Amps => _amps;

    /// <summary>Largest current sum left at any node, the reference included, from <see cref="Amps"/>.</summary>
    public double ResidualAmps { get; private set; }

    /// <summary>Newton steps the last solve took.</summary>
    public int Steps { get; private set; }

    /// <summary>
    /// Which nodes have less than <see cref="FloatingSiemens"/> to the reference: the conductance a small test source
    /// between the node and the reference would see, every curve at its slope there. Found when first asked for.
    /// </summary>
    public ReadOnlySpan<bool> Floating
    {
        get
        {
            FindFloating();
            return _floating;
        }
    }

    /// <summary>
    /// What a small test source between each node and the reference would see, Ω, every curve at its slope there; infinite
    /// without any path. Found when asked for; overwritten by the next solve.
    /// </summary>
    public void OhmsToReference(Span<double> ohms)
    {
        _equations.ResistanceToReference(_step);
        for (var n = 0; n < ohms.Length; n++)
        {
            var place = _equations.Place[n];
            ohms[n] = _islands[n] != 0 ? double.PositiveInfinity : place < _step.Length ? _step[place] : 0;
        }
    }

    /// <summary>Whether a part of the circuit has no path to the reference at all.</summary>
    internal bool HasIslands => _islands.Any;

    /// <summary>Unknown potentials, the size of <see cref="TransferOhms"/> less one.</summary>
    internal int Unknowns => _equations.Unknowns;

    /// <summary>The row of each node in <see cref="TransferOhms"/>; the last is the reference's.</summary>
    internal int[] Rows => _equations.Place;

    /// <summary>The slope of each branch where the last solve ended.</summary>
    internal ReadOnlySpan<double> Siemens => _equations.Siemens;

    /// <summary>What one amp into each row does to every other, at the slopes where the last solve ended.</summary>
    internal void TransferOhms(Span<double> ohms) => _equations.TransferOhms(ohms);

    /// <summary>Voltage between two nodes: potential(a) − potential(b).</summary>
    public double Volts(int a, int b) => _potentials[a] - _potentials[b];

    /// <summary>
    /// Gives a branch another curve, of any kind: a contact moves, a fuse blows. Only a change from or to
    /// <see cref="FixedVoltage"/> lays the circuit out anew (and forgets the last potentials).
    /// </summary>
    public void SetCurve(int branch, Curve curve)
    {
        var old = _curves[branch];
        if (ReferenceEquals(old, curve))
        {
            return;
        }

        _curves[branch] = curve;
        _layoutChanged |= old is FixedVoltage != curve is FixedVoltage;
        _pathsChanged |= old is Open or FixedCurrent || curve is Open or FixedCurrent;
        _equations.Changed(branch);
    }

    /// <summary>Solves, from the last potentials when <paramref name="warm"/>, else from 0 V everywhere.</summary>
    public Outcome Solve(bool warm = true) => Solve(warm, default);

    /// <summary>Solves from potentials near the answer: those of every node, in volts, as an earlier solve left them.</summary>
    public Outcome Solve(ReadOnlySpan<double> nearVolts) => Solve(warm: false, nearVolts);

    private Outcome Solve(bool warm, ReadOnlySpan<double> nearVolts)
    {
        if (_layoutChanged)
        {
            _equations = new(_circuit, _curves);
            _step = new double[_equations.Unknowns];
            _layoutChanged = false;
            _pathsChanged = true;
        }

        if (StructuralError() is { } error)
        {
            return error;
        }

        if (!warm)
        {
            _equations.StartFrom(nearVolts);
        }

        _floatingKnown = false;
        var arrived = Descend();
        Report();
        if (arrived && double.IsFinite(ResidualAmps))
        {
            return Outcome.Solved.Instance;
        }

        _equations.Potentials.Clear();
        return Outcome.Unsolved.Instance;
    }

    private Outcome.StructuralError? StructuralError()
    {
        if (_equations.Joints.LoopBranches is { Length: > 0 } loop)
        {
            return new([.. loop]);
        }

        if (_pathsChanged)
        {
            _islands.Find(_curves);
            _pathsChanged = false;
        }

        if (!_islands.Any)
        {
            return null;
        }

        var stranded = ImmutableArray.CreateBuilder<int>();
        for (var b = 0; b < _curves.Length; b++)
        {
            if (_islands.Strands(b, _curves[b]))
            {
                stranded.Add(b);
            }
        }

        return stranded.Count > 0 ? new(stranded.ToImmutable()) : null;
    }

    // What is made of straight stretches counts as the one it starts on. Two steps tell as a rule whether it rests there;
    // what counts in the end is that it does.
    private bool Descend()
    {
        _equations.TakeStretches();
        _equations.Evaluate(_amps);
        _exact = true;
        var corrections = 0;
        for (Steps = 1; Steps <= MostSteps; Steps++)
        {
            _equations.Factor();
            _equations.NewtonStep(_step);
            var small = _equations.IsSmall(_step);
            var exact = _exact;
            Move(small || _equations.BendCount == 0);
            if ((small || Steps == 2) && corrections <= MostCorrections && _equations.TakeStretches())
            {
                if (++corrections > MostCorrections)
                {
                    _equations.BendAtCorners();
                }

                _equations.Evaluate(_amps);
                _exact = true;
            }
            else if (small && exact)
            {
                return true;
            }
        }

        return false;
    }

    // The whole step, or where the co-content along it is lowest if it rises again before the step's end.
    private void Move(bool whole)
    {
        const double flat = 0.05;
        const double near = 1e-3;
        _exact = whole || _equations.LargestOverBends(_step) <= near;
        var slopeAtStart = _equations.ContentSlope(_step);
        _equations.Mark(_amps);
        var slope = MoveTo(1);
        if (whole || slope <= flat * -slopeAtStart)
        {
            return;
        }

        // Newton along the step, which goes straight to a corner between two straight stretches, kept inside what is known.
        var (low, high, part) = (0.0, 1.0, 1.0);
        for (var tries = 0; tries < 60 && Math.Abs(slope) > flat * -slopeAtStart; tries++)
        {
            (low, high) = slope < 0 ? (part, high) : (low, part);
            var next = part - (slope / _equations.ContentCurvature(_step));
            part = next > low && next < high ? next : (low + high) / 2;
            slope = MoveTo(part);
        }
    }

    private double MoveTo(double part)
    {
        _equations.Potentials.MoveFromMark(_step, part);
        if (_exact)
        {
            _equations.Evaluate(_amps);
        }
        else
        {
            _equations.EvaluateBends(_step, part, _amps);
        }

        return _equations.ContentSlope(_step);
    }

    private void Report()
    {
        _equations.NodePotentials(_potentials);
        ResidualAmps = _equations.Joints.Any ? FillJoints() : _equations.LeftAmps;
        if (_islands.Any)
        {
            SetIslandsDown();
        }
    }

    // Gives the ideal voltage sources their currents; the largest sum left then.
    private double FillJoints()
    {
        _nodeSums.Clear();
        for (var b = 0; b < _amps.Length; b++)
        {
            _nodeSums.Leave(_circuit.Branches[b].From, _amps[b]);
            _nodeSums.Leave(_circuit.Branches[b].To, -_amps[b]);
        }

        _equations.Joints.Currents(_nodeSums, _amps);
        var most = 0.0;
        for (var n = 0; n < _potentials.Length; n++)
        {
            most = Math.Max(most, Math.Abs(_nodeSums[n]));
        }

        return most;
    }

    private void SetIslandsDown()
    {
        for (var n = _potentials.Length - 1; n >= 0; n--)
        {
            _potentials[n] -= _potentials[_islands[n]];
        }
    }

    private void FindFloating()
    {
        if (_floatingKnown)
        {
            return;
        }

        _equations.ResistanceToReference(_step);
        for (var n = 0; n < _floating.Length; n++)
        {
            var place = _equations.Place[n];
            _floating[n] = _islands[n] != 0 || (place < _step.Length && _step[place] > 1 / FloatingSiemens);
        }

        _floatingKnown = true;
    }
}
