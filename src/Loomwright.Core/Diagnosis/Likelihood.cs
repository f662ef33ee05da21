using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>How well what was answered goes with what there would be to see.</summary>
internal static class Likelihood
{
    // How often the battery stands so much lower than it is written down that a lamp that would be lit may look dim (judgement).
    private const double WeakBattery = 0.15;

    // Beside a list that explains an answer, something else explains it as by guessing.
    private const double GuessedSign = 0.3, GuessedReading = 1.0 / 15;

    /// <summary>The chance of an answer, for a reading the density, when this is what there is to see. Never 0.</summary>
    public static double Of(FaultTable table, Look look, Evidence answer)
    {
        switch (answer)
        {
            case Evidence.Seen seen when look.Signs.IsEmpty:
                return Math.Pow(GuessedSign, seen.Signs.Length);
            case Evidence.Seen seen:
                var (right, weak, guessed) = (1.0, 1.0, 1.0);
                foreach (var (observable, sign) in seen.Signs)
                {
                    var (what, there) = (table.Observables[observable], look.Signs[observable]);
                    var chance = Misreading.Of(what, there, sign);
                    right *= chance;
                    weak *= what.Sense == Sense.Sight && (Symbol)there == Symbol.Lit ? (chance + Misreading.Of(what, (byte)Symbol.Dim, sign)) / 2 : chance;
                    guessed *= GuessedSign;
                }

                return ((1 - Misreading.WrongControl) * (((1 - WeakBattery) * right) + (WeakBattery * weak))) + (Misreading.WrongControl * guessed);
            case Evidence.Measured measured:
                return look.Volts.IsEmpty ? GuessedReading : Misreading.Reading(Volts(look, measured.Red, measured.Black), measured.Volts);
            default:
                return 1;
        }
    }

    /// <summary>The best chance that answer could have under anything.</summary>
    public static double Best(FaultTable table, Evidence answer) => answer switch
    {
        Evidence.Seen seen => seen.Signs.Aggregate(1.0, (p, s) => p * Misreading.Of(table.Observables[s.Observable], s.Sign, s.Sign)),
        Evidence.Measured measured => Misreading.Reading(measured.Volts, measured.Volts),
        _ => 1,
    };

    /// <summary>The chance of an answer under something that is not in the list.</summary>
    public static double UnderSomethingElse(Evidence answer) => answer switch
    {
        Evidence.Seen seen => Math.Pow(GuessedSign, Math.Min(seen.Signs.Length, 3)),
        Evidence.Measured => GuessedReading,
        _ => 1,
    };

    /// <summary>What the meter would show.</summary>
    public static double Volts(Look look, int red, int? black) => look.Volts.IsEmpty ? 0 : look.Volts[red] - (black is { } b ? look.Volts[b] : 0);
}
