using CsCheck;
using Loomwright.Parts;

namespace Loomwright.Tests.Network;

/// <summary>What every curve owes the solver: no current at 0 V, never falling, slope and content that fit its current.</summary>
public sealed class CurveTests
{
    private static readonly Gen<Curve> Passive = Gen.OneOf(
        Gen.Double[-3, 9].Select(Curve (power) => new Ohms(Math.Pow(10, power))),
        Gen.Const<Curve>(new Open()),
        Gen.Select(Gen.Double[0.5, 60], Gen.Double[5, 14], Gen.Double[9, 16], Curve (watts, volts, k) => new Filament(watts, volts, k)),
        Gen.Const<Curve>(Diode.Silicon),
        Gen.Select(Gen.Double[0.1, 20], Gen.Double[5, 14], Curve (watts, volts) => Diode.LedLamp(watts, volts)),
        Gen.Select(Gen.Double[-2, 2], Gen.Double[0.1, 9], Gen.Double[20, 60], Curve (g, vf, part) => new Diode(Math.Pow(10, g), vf, vf / part, 1e-9)),
        Gen.Select(Gen.Double[0.02, 2], Gen.Double[7, 10], Gen.Double[3, 6], Curve (amps, drop, start) => new DriverLed(amps, drop, start)));

    private static readonly Gen<Curve> Any = Gen.OneOf(
        Passive,
        Gen.Select(Gen.Double[-15, 15], Gen.Double[0.004, 1], Curve (emf, ohms) => new Source(emf, ohms)),
        Gen.Select(Gen.Double[10, 14], Gen.Double[0.004, 0.02], Gen.Double[0.02, 3], Curve (emf, ohms, charging) => new Cells(emf, ohms, charging)),
        Gen.Select(Gen.Double[3, 15], Gen.Double[0.01, 0.5], Gen.Double[0.1, 20], Curve (volts, ohms, limit) => new LimitedSource(volts, ohms, limit)),
        Gen.Double[-10, 10].Select(Curve (amps) => new FixedCurrent(amps)));

    private static readonly Gen<double> Volts = Gen.OneOf(Gen.Double[-20, 20], Gen.Double[-0.05, 0.05], Gen.Double[-1e4, 1e4]);

    [Fact]
    public void No_current_flows_through_a_passive_element_without_voltage_and_none_against_it() =>
        Gen.Select(Passive, Volts).Sample((curve, volts) =>
        {
            Assert.Equal(0, curve.At(0).Amps);
            Assert.Equal(0, curve.ContentWatts(0));
            Assert.True(curve.At(volts).Amps * volts >= 0, "power is taken up");
        });

    [Fact]
    public void More_voltage_never_gives_less_current() =>
        Gen.Select(Any, Volts, Volts).Sample((curve, a, b) =>
        {
            var (low, high) = (curve.At(Math.Min(a, b)).Amps, curve.At(Math.Max(a, b)).Amps);
            Assert.True(high >= low - (1e-12 * (1 + Math.Abs(low))), "the current falls");
            Assert.True(curve.At(a).Siemens >= 0 && double.IsFinite(curve.At(a).Amps), "a slope below zero or no number");
        });

    [Fact]
    public void The_slope_adds_up_to_the_current_and_the_current_to_the_content() =>
        Gen.Select(Any, Gen.Double[-20, 20]).Sample((curve, volts) =>
        {
            var amps = curve.At(volts).Amps - curve.At(0).Amps;
            Assert.Equal(amps, Integral(curve, v => curve.At(v).Siemens, volts), 1e-7 * (1 + Math.Abs(amps)));
            var content = curve.ContentWatts(volts);
            Assert.Equal(content, Integral(curve, v => curve.At(v).Amps, volts), 1e-7 * (1 + Math.Abs(content)));
        }, iter: 300);

    [Fact]
    public void Far_below_its_knee_a_diode_still_has_a_current_and_a_slope() =>
        Assert.All(Enumerable.Range(0, 4000), k =>
        {
            var point = Diode.Silicon.At(0.7 - (0.03 * (30 + (k * 0.005))));
            Assert.True(double.IsFinite(point.Amps) && point.Siemens >= Diode.Silicon.OffSiemens, "no number");
        });

    [Fact]
    public void A_straight_curve_says_the_same_as_its_line() =>
        Gen.Select(Any.Where(curve => curve.Straight is not null), Volts).Sample((curve, volts) =>
        {
            var line = curve.Straight!.Value;
            var point = curve.At(volts);
            Assert.Equal(point.Amps, line.At(volts).Amps, 1e-12 * Math.Abs(point.Amps));
            Assert.Equal(point.Siemens, line.At(volts).Siemens);
        });

    [Fact]
    public void A_filament_takes_its_watts_at_rated_voltage_and_a_fourteenth_of_its_resistance_cold()
    {
        var lamp = new Filament(55, 13.2);

        Assert.Equal(55, lamp.At(13.2).Amps * 13.2, 55e-5);
        Assert.Equal(13.2 * 13.2 / 55 / 14, 1 / lamp.At(0).Siemens, 1e-12);
        Assert.Equal(13.2 * 13.2 / 55 / 14, lamp.Cold().ResistanceOhms, 1e-12);
        Assert.Equal(Math.Pow(0.5, 0.55), lamp.At(6.6).Amps / lamp.At(13.2).Amps, 1e-5);
    }

    [Fact]
    public void A_bench_supply_holds_its_voltage_up_to_the_limit_and_its_current_below_and_takes_nothing_back()
    {
        var supply = new LimitedSource(12, 0.05, 5);

        Assert.Equal(-2.5, supply.At(12 - (2.5 * 0.05)).Amps, 1e-5);
        Assert.Equal(-5, supply.At(1).Amps, 2e-4);
        Assert.InRange(supply.At(14).Amps, 0, 1e-4);
    }

    [Fact]
    public void An_element_that_could_not_exist_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Ohms(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Source(12, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Diode(1, 0.7, 0.1, 1e-9));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DriverLed(1, 5, 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FixedVoltage(double.NaN));
    }

    // Adaptive Simpson from 0, split at the curve's own corners so that none is stepped over.
    private static double Integral(Curve curve, Func<double, double> f, double to)
    {
        double[] corners = curve switch
        {
            Diode d => [d.ForwardVolts],
            DriverLed d => [d.StartVolts, d.DropOutVolts],
            LimitedSource s => [s.Volts - (s.SeriesOhms * s.LimitAmps), s.Volts],
            _ => [],
        };
        var (low, high) = (Math.Min(0, to), Math.Max(0, to));
        double[] ends = [low, .. corners.Where(c => c > low && c < high).Order(), high];
        var sum = ends.Zip(ends.Skip(1), (a, b) => Simpson(f, a, b, f(a), f((a + b) / 2), f(b), 40)).Sum();
        return to < 0 ? -sum : sum;
    }

    private static double Simpson(Func<double, double> f, double a, double b, double fa, double fm, double fb, int depth)
    {
        var m = (a + b) / 2;
        var (fl, fr) = (f((a + m) / 2), f((m + b) / 2));
        var whole = (b - a) / 6 * (fa + (4 * fm) + fb);
        var halves = (b - a) / 12 * (fa + (4 * fl) + (2 * fm) + (4 * fr) + fb);
        return depth < 34 && (depth == 0 || Math.Abs(halves - whole) < 1e-12)
            ? halves
            : Simpson(f, a, m, fa, fl, fm, depth - 1) + Simpson(f, m, b, fm, fr, fb, depth - 1);
    }
}
