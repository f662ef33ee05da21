namespace Loomwright.Network;

/// <summary>
/// The unknown potentials, each as a number and the part of it that no longer fits: the voltage across a micro-ohm
/// is a difference of two nearly equal potentials and needs those digits. The last place is the reference, 0 V.
/// </summary>
internal sealed class Potentials(int unknowns)
{
    private readonly (double High, double Low)[] _volts = new (double, double)[unknowns + 1];
    private readonly (double High, double Low)[] _start = new (double, double)[unknowns + 1];

    public double this[int place] => _volts[place].High + _volts[place].Low;

    public void Set(int place, double volts) => _volts[place] = (volts, 0);

    public void Clear() => Array.Clear(_volts);

    /// <summary>Potential of a minus potential of b plus a fixed offset, rounded once.</summary>
    public double Volts(int a, int b, double offsetVolts)
    {
        ref readonly var from = ref _volts[a];
        ref readonly var to = ref _volts[b];
        var high = Sum(from.High, -to.High, out var error);
        if (offsetVolts == 0)
        {
            return high + (error + (from.Low - to.Low));
        }

        var volts = Sum(high, offsetVolts, out var second);
        return volts + (error + second + (from.Low - to.Low));
    }

    /// <summary>Marks where the next steps start.</summary>
    public void Mark() => _volts.CopyTo(_start, 0);

    /// <summary>Goes to the mark plus a part of a step.</summary>
    public void MoveFromMark(ReadOnlySpan<double> stepVolts, double part)
    {
        for (var k = 0; k < stepVolts.Length; k++)
        {
            ref var volts = ref _volts[k];
            ref readonly var start = ref _start[k];
            var high = Sum(start.High, part * stepVolts[k], out var error);
            volts.High = Sum(high, start.Low + error, out volts.Low);
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
