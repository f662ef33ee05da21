using System.Collections.Immutable;
using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>
/// How well all answers of a search together go with something that may be wrong, for each state of the battery. A lamp that is
/// a dim one by its own watts or the battery is one in every look, so what is told of it counts once. Not for two threads at once.
/// </summary>
internal sealed class Weighing
{
    private readonly FaultTable _table;
    private readonly ImmutableArray<Evidence> _answers;

    // By observable, over all looks: how likely what was told is of a lamp that is lit there, of a dim one, of one that is now this, now that.
    private readonly (double Lit, double Dim, double Either)[] _told;
    private readonly List<int> _lamps = [];

    public Weighing(FaultTable table, ImmutableArray<Evidence> answers)
    {
        (_table, _answers) = (table, answers);
        _told = new (double, double, double)[table.Observables.Length];
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
                var (lit, dim, either) = Shares(lamp, b);
                chance *= lit + dim + either;
            }

            byBattery[b] += Math.Log(chance);
        }

        if (hypothesis.IsOfTheBattery)
        {
            byBattery.Fill(byBattery[Battery.AsWritten]);
        }
    }

    /// <summary>The logarithm of the chance of all answers with one state of the battery.</summary>
    public double Of(Hypothesis hypothesis, int battery)
    {
        Span<double> all = stackalloc double[Battery.Shares.Length];
        Of(hypothesis, all);
        return all[battery];
    }

    /// <summary>How far each answer is from the likeliest one with that, as a log-likelihood ratio, 0 or more; in their order. A lamp that is dim where it would be lit is nothing odd.</summary>
    public ImmutableArray<double> Against(Hypothesis hypothesis, int battery) =>
    [
        .. _answers.Select(a => a switch
        {
            Evidence.Seen seen when hypothesis.Looks[seen.Stimulus].Signs is { IsEmpty: false } signs =>
                seen.Signs.Sum(s => Against(_table.Observables[s.Observable], signs[s.Observable], s.Sign)),
            Evidence.Measured read => Likelihood.Against(hypothesis, Battery.Shares[battery], read),
            Evidence.Checked found => Likelihood.Against(hypothesis, found),
            _ => 0,
        }),
    ];

    private static double Against(Observable what, byte there, byte told) =>
        Lit(what, there) && (Symbol)told == Symbol.Dim ? 0 : Math.Log(Misreading.Of(what, there, there) / Misreading.Of(what, there, told));

    private (double Lit, double Dim, double Either) Shares(int lamp, int battery)
    {
        var (lit, dim, either) = _told[lamp];
        return ((1 - Battery.Dims[battery] - Battery.NowAndThen) * lit, Battery.Dims[battery] * dim, Battery.NowAndThen * either);
    }

    private static bool Lit(Observable what, byte there) => what.Sense == Sense.Sight && (Symbol)there == Symbol.Lit;

    private static double Either(Observable what, byte told) => (Misreading.Of(what, (byte)Symbol.Dim, told) + Misreading.Of(what, (byte)Symbol.Lit, told)) / 2;

    // The logarithm of all that does not hang on the battery; what was told of lamps that are lit is gathered by lamp.
    private double Seen(Hypothesis hypothesis)
    {
        foreach (var lamp in _lamps)
        {
            _told[lamp] = default;
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

        var (right, lamps) = (1.0 - Misreading.WrongControl, 1.0);
        foreach (var (observable, sign) in seen.Signs)
        {
            var (what, there) = (_table.Observables[observable], look.Signs[observable]);
            if (Lit(what, there))
            {
                lamps *= Math.Max(Misreading.Of(what, there, sign), Misreading.Of(what, (byte)Symbol.Dim, sign));
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

        foreach (var (observable, sign) in seen.Signs)
        {
            var (what, there) = (_table.Observables[observable], look.Signs[observable]);
            if (Lit(what, there))
            {
                if (_told[observable].Lit == 0)
                {
                    _lamps.Add(observable);
                    _told[observable] = (1, 1, 1);
                }

                ref var told = ref _told[observable];
                told = (told.Lit * Misreading.Of(what, there, sign), told.Dim * Misreading.Of(what, (byte)Symbol.Dim, sign), told.Either * Either(what, sign));
            }
        }

        return right;
    }
}
