using Loomwright.Dictionary;

namespace Loomwright.Diagnosis;

/// <summary>How well one answer goes with what there would be to measure or to find.</summary>
internal static class Likelihood
{
    /// <summary>Beside a list that explains an answer, something else explains a sign as by guessing …</summary>
    public const double GuessedSign = 0.3;

    // … and a reading and a find.
    private const double GuessedReading = 1.0 / 15, GuessedFind = 0.2;

    // A lead that nothing holds may read anything up to this, either way, or nothing at all (judgement).
    private const double MostOfALooseLead = 3;

    /// <summary>Whether a meter there shows volts that hang on leaks nobody knows.</summary>
    public static bool IsLoose(Look look, int red, int? black) => look.IsLoose(red, black) && Math.Abs(Volts(look, red, black)) < MostOfALooseLead;

    /// <summary>The density of a reading when this is wrong and the battery stands so. Never 0.</summary>
    public static double Of(Hypothesis hypothesis, double battery, Evidence.Measured read) =>
        hypothesis.Looks[read.Stimulus] is { Volts.IsEmpty: false } look ? IsLoose(look, read.Red, read.Black) ? Loose(read.Volts)
        : Held(look, read.Red, battery * Volts(look, read.Red, read.Black), read.Volts) : GuessedReading;

    /// <summary>The chance that a check finds that: what is there is overlooked, or something seen that is not there, now and then. Never 0.</summary>
    public static double Of(Hypothesis hypothesis, Evidence.Checked found)
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

        var all = Math.Max(1, shows);
        return found.Found is null
            ? ((1 - Misreading.Overlooked) * (1 - (shows / all))) + (Misreading.Overlooked * shows / all)
            : ((1 - Misreading.Overlooked) * such / all) + (Misreading.Overlooked * Misreading.Invented);
    }

    /// <summary>How far a reading is from the likeliest, as a log-likelihood ratio.</summary>
    public static double Against(Hypothesis hypothesis, double battery, Evidence.Measured read) =>
        hypothesis.Looks[read.Stimulus] is { Volts.IsEmpty: false } look && !IsLoose(look, read.Red, read.Black) && battery * Volts(look, read.Red, read.Black) is var volts
            ? Math.Max(0, Math.Log(Held(look, read.Red, volts, volts) / Held(look, read.Red, volts, read.Volts))) : 0;

    /// <summary>How far what was found is from the likeliest, as a log-likelihood ratio.</summary>
    public static double Against(Hypothesis hypothesis, Evidence.Checked found) =>
        Math.Log(hypothesis.Traces.Where(t => t.Check == found.Check).Select(t => (string?)t.Found).Append(null).Max(f => Of(hypothesis, found with { Found = f })) / Of(hypothesis, found));

    /// <summary>How much worse than what explains it best something that is not in the list explains an answer, as a logarithm.</summary>
    public static double UnderSomethingElse(Evidence answer) => answer switch
    {
        Evidence.Seen seen => Math.Min(seen.Signs.Length, 3) * Math.Log(GuessedSign),
        Evidence.Measured read => Math.Log(GuessedReading / Misreading.Reading(read.Volts, 0, read.Volts)),
        Evidence.Checked found => Math.Log(found.Found is null ? 1 - GuessedFind : GuessedFind * GuessedFind),
        _ => 0,
    };

    // Against battery minus the meter itself draws a loose lead down to nought, or leaks hold it a little above.
    private static double Held(Look look, int red, double volts, double told) => look.Floats.IsEmpty || !look.Floats[red] || Math.Abs(volts) > MostOfALooseLead
        ? Misreading.Reading(volts, look.SupplyAmps, told)
        : (0.5 * Misreading.Reading(volts, look.SupplyAmps, told)) + (0.5 * Misreading.Reading(0, look.SupplyAmps, told));

    private static double Loose(double told) => (0.5 * Misreading.Reading(0, 0, told)) + (Math.Abs(told) <= MostOfALooseLead ? 0.5 / (2 * MostOfALooseLead) : 0);

    /// <summary>What the meter would show.</summary>
    public static double Volts(Look look, int red, int? black) => look.Volts.IsEmpty ? 0 : look.Volts[red] - (black is { } b ? look.Volts[b] : 0);
}
