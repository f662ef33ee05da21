using System.Collections.Immutable;
using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>
/// How well all answers of a search together go with something that may be wrong, for each state of the battery. What makes a
/// lamp a dim one of its own does so in every look, so that counts once. Not for two threads at once.
/// </summary>
internal sealed class Weighing
{
    // What flashes does so by one flasher, which may start or not by little: when it does otherwise than it was computed to, all its lamps
    // do. While a starter drags the battery down, box, relays and lamps hang on little as much (judgement).
    private const double FlashesElse = 0.04, SagsElse = 0.1, Alike = 0.5, OnlyAStarterAmps = 50;

    private const double Impossible = -1000;

    private static readonly int Batteries = Battery.Shares.Length;
    private static readonly int Cells = Batteries * Brightness.Own.Length;

    private readonly FaultTable _table;
    private readonly ImmutableArray<Evidence> _answers;
    // Done when all that was odd first was dim.
    private readonly int? _complaint;

    // By observable and cell, which is a state of the battery and a lamp of its own: the chance of all that was told of a lamp that is not dark.
    private readonly double[] _told;
    private readonly bool[] _isTold;
    private readonly List<int> _lamps = [];
    private readonly double[] _left = new double[Batteries];

    public Weighing(FaultTable table, ImmutableArray<Evidence> answers)
    {
        (_table, _answers) = (table, answers);
        _complaint = answers.OfType<Evidence.Seen>().FirstOrDefault(s => Odd(s).Any()) is { } complaint && Odd(complaint).All(s => (Symbol)s.Sign == Symbol.Dim) ? complaint.Stimulus : null;
        _told = new double[table.Observables.Length * Cells];
        _isTold = new bool[table.Observables.Length];
    }

    /// <summary>The logarithm of the chance of all answers for each of <see cref="Battery.Shares"/>, written where it is told.</summary>
    public void Of(Hypothesis hypothesis, Span<double> byBattery)
    {
        byBattery.Fill(Seen(hypothesis));
        for (var b = 0; b < byBattery.Length; b++)
        {
            var chance = 1.0;
            foreach (var answer in _answers)
            {
                chance *= answer is Evidence.Measured read ? Likelihood.Of(hypothesis, Battery.Shares[b], read) : 1;
            }

            foreach (var lamp in _lamps)
            {
                var any = 0.0;
                foreach (var told in _told.AsSpan((lamp * Cells) + (b * Brightness.Own.Length), Brightness.Own.Length))
                {
                    any += told;
                }

                chance *= any / Brightness.Own.Length;
            }

            byBattery[b] += Math.Log(chance);
        }

        for (var b = 0; hypothesis.IsOfTheBattery && b < byBattery.Length; b++)
        {
            byBattery[b] += Battery.GoesWithItsFault(b) ? Battery.MoreWithItsFault : Impossible;
        }

        // Where all that was complained of first is dim lamps, what leaves them as designed is hardly a cause of it; a battery that low is.
        var charge = _complaint is { } complained && !hypothesis.IsOfTheBattery && hypothesis.Looks[complained].LooksLike(_table.Healthy.Looks[complained]);
        for (var b = 0; charge && b < byBattery.Length; b++)
        {
            byBattery[b] += Battery.IsToBeCharged(b) ? Battery.HardlyAnExcuse : 0;
        }
    }

    /// <summary>The logarithm of the chance of all answers with one state of the battery.</summary>
    public double Of(Hypothesis hypothesis, int battery)
    {
        Span<double> all = stackalloc double[Batteries];
        Of(hypothesis, all);
        return all[hypothesis.IsOfTheBattery && !Battery.GoesWithItsFault(battery) ? Battery.AsWritten : battery];
    }

    /// <summary>How far each answer is from the likeliest one with that, as a log-likelihood ratio, 0 or more; in their order.</summary>
    public ImmutableArray<double> Against(Hypothesis hypothesis, int battery) =>
    [
        .. _answers.Select(a => a switch
        {
            Evidence.Seen seen when hypothesis.Looks[seen.Stimulus] is { Signs.IsEmpty: false } look => Against(look, battery, seen),
            Evidence.Measured read => Likelihood.Against(hypothesis, Battery.Shares[battery], read),
            Evidence.Checked found => Likelihood.Against(hypothesis, found),
            _ => 0,
        }),
    ];

    private IEnumerable<(int Observable, byte Sign)> Odd(Evidence.Seen seen) => _table.Healthy.Looks[seen.Stimulus].Signs is { IsEmpty: false } healthy ? seen.Signs.Where(s => healthy[s.Observable] != s.Sign) : [];

    // Lamps are dim together, by what they all hang on: the oddest of them stands for all.
    private double Against(Look look, int battery, Evidence.Seen seen)
    {
        var (others, shining, first, isStart) = (0.0, 0.0, true, IsStart(seen.Stimulus));
        foreach (var (observable, told) in seen.Signs)
        {
            var (what, there) = (_table.Observables[observable], look.Signs[observable]);
            if (HangsOnLittle(isStart, what, there, told))
            {
                (others, first) = (others - Math.Log(Otherwise(isStart, what, there, told, first)), false);
            }
            else if (Shines(what, there))
            {
                var dim = Brightness.DimOfAny(look.Light[observable] * Brightness.Left(what, Battery.Shares[battery], look.SupplyAmps));
                shining = Math.Max(shining, Math.Log(Math.Max(Told(what, dim, (byte)Symbol.Lit), Told(what, dim, (byte)Symbol.Dim)) / Told(what, dim, told)));
            }
            else
            {
                others += Math.Log(Misreading.Of(what, there, there) / Misreading.Of(what, there, told));
            }
        }

        return others + shining;
    }

    private static double Told(Observable what, double dim, byte told) => (dim * Misreading.Of(what, (byte)Symbol.Dim, told)) + ((1 - dim) * Misreading.Of(what, (byte)Symbol.Lit, told));

    private static bool Shines(Observable what, byte there) => what.LightPower is not null && (Symbol)there is Symbol.Lit or Symbol.Dim;

    // Whether one thing that does otherwise there than it was computed to is no wonder, as others then do too.
    private static bool HangsOnLittle(bool isStart, Observable what, byte there, byte told) => there != told
        && (isStart ? !(Shines(what, there) && (Symbol)told is Symbol.Lit or Symbol.Dim) : what.LightPower is not null && Flashes(there) && !Flashes(told));

    private static double Otherwise(bool isStart, Observable what, byte there, byte told, bool first) =>
        first ? Math.Max(isStart ? SagsElse : FlashesElse, Misreading.Of(what, there, told)) : Alike;

    private bool IsStart(int stimulus) => Math.Abs(_table.Healthy.Looks[stimulus].SupplyAmps) > OnlyAStarterAmps;

    private static bool Flashes(byte sign) => (Symbol)sign is Symbol.Flashing or Symbol.FlashingFast or Symbol.FlashingSlowly;

    // The logarithm of all that does not hang on the battery; what was told of lamps that are not dark is gathered by lamp.
    private double Seen(Hypothesis hypothesis)
    {
        foreach (var lamp in _lamps)
        {
            _isTold[lamp] = false;
        }

        _lamps.Clear();
        var all = 0.0;
        foreach (var answer in _answers)
        {
            all += answer switch
            {
                Evidence.Seen seen => Math.Log(Seen(hypothesis.Looks[seen.Stimulus], seen)),
                Evidence.Checked found => Math.Log(Likelihood.Of(hypothesis, found)),
                _ => 0,
            };
        }

        return all;
    }

    // The likelier of the two: the control asked for was operated, or another.
    private double Seen(Look look, Evidence.Seen seen)
    {
        var guessed = Math.Pow(Likelihood.GuessedSign, seen.Signs.Length);
        if (look.Signs.IsEmpty)
        {
            return guessed;
        }

        var (right, lamps, first, isStart) = (1.0 - Misreading.WrongControl, 1.0, true, IsStart(seen.Stimulus));
        foreach (var (observable, sign) in seen.Signs)
        {
            var (what, there) = (_table.Observables[observable], look.Signs[observable]);
            if (HangsOnLittle(isStart, what, there, sign))
            {
                (right, first) = (right * Otherwise(isStart, what, there, sign, first), false);
            }
            else if (Shines(what, there))
            {
                lamps *= Math.Max(Misreading.Of(what, (byte)Symbol.Lit, sign), Misreading.Of(what, (byte)Symbol.Dim, sign));
            }
            else
            {
                right *= Misreading.Of(what, there, sign);
            }
        }

        if (right * lamps < Misreading.WrongControl * guessed)
        {
            return Misreading.WrongControl * guessed;
        }

        var power = 0.0;
        foreach (var (observable, sign) in seen.Signs)
        {
            var what = _table.Observables[observable];
            if (!Shines(what, look.Signs[observable]) || HangsOnLittle(isStart, what, look.Signs[observable], sign))
            {
                continue;
            }

            if (power != what.LightPower)
            {
                power = what.LightPower!.Value;
                for (var b = 0; b < Batteries; b++)
                {
                    _left[b] = Brightness.Left(what, Battery.Shares[b], look.SupplyAmps);
                }
            }

            Tell(observable, look.Light[observable], Misreading.Of(what, (byte)Symbol.Lit, sign), Misreading.Of(what, (byte)Symbol.Dim, sign));
        }

        return right;
    }

    private void Tell(int lamp, double light, double lit, double dim)
    {
        var cells = _told.AsSpan(lamp * Cells, Cells);
        if (!_isTold[lamp])
        {
            _isTold[lamp] = true;
            _lamps.Add(lamp);
            cells.Fill(1);
        }

        var cell = 0;
        foreach (var left in _left)
        {
            foreach (var own in Brightness.Own)
            {
                cells[cell++] *= lit + ((dim - lit) * Brightness.Dim(light * left * own));
            }
        }
    }
}
