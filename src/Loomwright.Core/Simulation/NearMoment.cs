using Loomwright.Network;
using Loomwright.Parts;

namespace Loomwright.Simulation;

/// <summary>One operating point of a healthy wiring, with all that is needed to find those of wirings that differ in a few links.</summary>
internal sealed class NearMoment
{
    private readonly double[] _ohms;
    private readonly int _stride;

    public NearMoment(Solver solver, double start, double share, Curve[] curves)
    {
        Start = start;
        Share = share;
        Curves = curves;
        Rows = solver.Rows;
        _stride = solver.Unknowns + 1;
        _ohms = new double[_stride * _stride];
        solver.TransferOhms(_ohms);
        Volts = [.. solver.Potentials];
        Amps = [.. solver.Amps];
        Siemens = [.. solver.Siemens];
        Bent = [.. Enumerable.Range(0, curves.Length).Where(l => curves[l].Straight is null)];
    }

    /// <summary>When it begins, as a share of the period of what is dimmed.</summary>
    public double Start { get; }

    /// <summary>Share of the time it lasts.</summary>
    public double Share { get; }

    /// <summary>What every link is in it.</summary>
    public Curve[] Curves { get; }

    /// <summary>Links whose curve bends.</summary>
    public int[] Bent { get; }

    /// <summary>Potential of every node.</summary>
    public double[] Volts { get; }

    /// <summary>Current of every link.</summary>
    public double[] Amps { get; }

    /// <summary>Slope of every link.</summary>
    public double[] Siemens { get; }

    /// <summary>Row of every node.</summary>
    public int[] Rows { get; }

    /// <summary>Rows, the reference's included.</summary>
    public int RowCount => _stride;

    /// <summary>What one amp into each row does to this one.</summary>
    public ReadOnlySpan<double> Row(int row) => _ohms.AsSpan(row * _stride, _stride);

    /// <summary>What one amp into a row does to another.</summary>
    public double Ohms(int row, int other) => _ohms[(row * _stride) + other];
}
