using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>How well what was answered goes with what there would be to see.</summary>
internal static class Likelihood
{
    // Beside a list that explains an answer, something else explains it as by guessing.
    private const double GuessedSign = 0.3, GuessedReading = 1.0 / 15, GuessedFind = 0.2;

    /// <summary>The chance of an answer, for a reading the density, when this is wrong and the battery stands so. Never 0.</summary>
    public static double Of(FaultTable table, Hypothesis hypothesis, double battery, Evidence answer) => answer switch
    {
        Evidence.Seen seen => Of(table, hypothesis.Looks[seen.Stimulus], battery, seen),
        Evidence.Measured m when hypothesis.Looks[m.Stimulus] is var look => look.Volts.IsEmpty ? GuessedReading : Misreading.Reading(battery * Volts(look, m.Red, m.Black), m.Volts),
        Evidence.Checked found => Of(hypothesis, found),
        _ => 1,
    };

    /// <summary>The best chance that answer could have under anything.</summary>
    public static double Best(FaultTable table, Evidence answer) => answer switch
    {
        Evidence.Seen seen => (1 - Misreading.WrongControl) * seen.Signs.Aggregate(1.0, (p, s) => p * Misreading.Of(table.Observables[s.Observable], s.Sign, s.Sign)),
        Evidence.Measured measured => Misreading.Reading(measured.Volts, measured.Volts),
        Evidence.Checked => 1 - Misreading.Overlooked,
        _ => 1,
    };

    /// <summary>The chance of an answer under something that is not in the list.</summary>
    public static double UnderSomethingElse(Evidence answer) => answer switch
    {
        Evidence.Seen seen => Math.Pow(GuessedSign, Math.Min(seen.Signs.Length, 3)),
        Evidence.Measured => GuessedReading,
        Evidence.Checked found => found.Found is null ? 1 - GuessedFind : GuessedFind * GuessedFind,
        _ => 1,
    };

    /// <summary>What the meter would show.</summary>
    public static double Volts(Look look, int red, int? black) => look.Volts.IsEmpty ? 0 : look.Volts[red] - (black is { } b ? look.Volts[b] : 0);

    private static double Of(FaultTable table, Look look, double battery, Evidence.Seen seen)
    {
        if (look.Signs.IsEmpty)
        {
            return Math.Pow(GuessedSign, seen.Signs.Length);
        }

        var (right, guessed, dims) = (1.0, 1.0, Battery.Dims(battery));
        foreach (var (observable, sign) in seen.Signs)
        {
            var (what, there) = (table.Observables[observable], look.Signs[observable]);
            var chance = Misreading.Of(what, there, sign);
            right *= what.Sense == Sense.Sight && (Symbol)there == Symbol.Lit ? chance + (dims * (Misreading.Of(what, (byte)Symbol.Dim, sign) - chance)) : chance;
            guessed *= GuessedSign;
        }

        return ((1 - Misreading.WrongControl) * right) + (Misreading.WrongControl * guessed);
    }

    // What is there is overlooked, or something seen that is not there, now and then.
    private static double Of(Hypothesis hypothesis, Evidence.Checked found)
    {
        var (shows, such) = (0.0, 0.0);
        foreach (var trace in hypothesis.Traces)
        {
            if (trace.Check == found.Check)
            {
                shows += trace.Chance;
                such += trace.Found == found.Found ? trace.Chance : 0;
            }
        }

        var seen = 1 - Misreading.Overlooked;
        var all = Math.Max(1, shows);
        return found.Found is null ? (seen * (1 - (shows / all))) + (Misreading.Overlooked * shows / all)
            : (seen * such / all) + (Misreading.Overlooked * Misreading.Invented);
    }
}
