namespace Loomwright.Network;

/// <summary>
/// The unknown potentials, each as a number and the part of it that no longer fits: the voltage across a micro-ohm
/// is a difference of two nearly equal potentials and needs those digits. The last place is the reference, 0 V.
/// </summary>
internal sealed class Potentials(int unknowns)
{
    private readonly double[] _high = new double[unknowns + 1];
    private readonly double[] _low = new double[unknowns + 1];
    private readonly double[] _startHigh = new double[unknowns + 1];
    private readonly double[] _startLow = new double[unknowns + 1];

    public double this[int place] => _high[place] + _low[place];

    public void Set(int place, double volts) => (_high[place], _low[place]) = (volts, 0);

    public void Clear()
    {
        Array.Clear(_high);
        Array.Clear(_low);
    }

    /// <summary>Potential of a minus potential of b plus a fixed offset, rounded once.</summary>
    public double Volts(int a, int b, double offsetVolts)
    {
        var high = Sum(_high[a], -_high[b], out var error);
        var volts = Sum(high, offsetVolts, out var second);
        return volts + (error + second + (_low[a] - _low[b]));
    }

    /// <summary>Marks where the next steps start.</summary>
    public void Mark()
    {
        _high.CopyTo(_startHigh, 0);
        _low.CopyTo(_startLow, 0);
    }

    /// <summary>Goes to the mark plus a part of a step.</summary>
    public void MoveFromMark(ReadOnlySpan<double> stepVolts, double part)
    {
        for (var k = 0; k < stepVolts.Length; k++)
        {
            var high = Sum(_startHigh[k], part * stepVolts[k], out var error);
            _high[k] = Sum(high, _startLow[k] + error, out _low[k]);
        }
    }

    // The rounded sum and, exactly, what rounding took away (Knuth's two-sum).
    private static double Sum(double a, double b, out double error)
    {
        var sum = a + b;
        var back = sum - a;
        error = (a - (sum - back)) + (b - back);
        return sum;
    }
}
