namespace Loomwright.Parts;

/// <summary>A rise by 1 between two voltages with both corners rounded, less its value at 0 V: two knees, one taken from the other.</summary>
internal readonly record struct Ramp
{
    private readonly Knee _low;
    private readonly Knee _high;
    private readonly double _perVolt;

    public Ramp(double lowVolts, double highVolts, double roundingVolts)
    {
        _low = new(lowVolts, roundingVolts);
        _high = new(highVolts, roundingVolts);
        _perVolt = 1 / (highVolts - lowVolts);
    }

    // The slope is never below zero: the low corner's is the larger at every voltage, also after rounding.
    public (double Height, double Slope) At(double volts)
    {
        var low = _low.At(volts);
        var high = _high.At(volts);
        return ((low.Height - high.Height) * _perVolt, (low.Slope - high.Slope) * _perVolt);
    }

    public double Area(double volts) => (_low.Area(volts) - _high.Area(volts)) * _perVolt;
}
