using System.Collections.Immutable;

namespace Loomwright.Diagnosis;

/// <summary>One answer a question may get.</summary>
/// <param name="Answer">In words: what differs from a bike with nothing wrong, or the volts.</param>
/// <param name="Chance">How likely that answer is by what is known, 0…1.</param>
/// <param name="Repairs">What it would speak for, the likeliest first, no more than three.</param>
/// <param name="Evidence">The answer itself; volts are those of the likeliest cause.</param>
public sealed record Outlook(string Answer, double Chance, ImmutableArray<string> Repairs, Evidence Evidence)
{
    private const int MostRepairs = 3, MostSigns = 3;

    internal static ImmutableArray<Outlook> Of(TroubleTable table, Belief belief, Question question)
    {
        var asking = table.Asking(belief.All);
        return
        [
            .. belief.All.Zip(belief.Weights).Select((h, e) => (Hypothesis: h.First, Weight: h.Second, Answer: asking.Answer(belief.Weights, question, e)))
                .Where(h => h.Answer >= 0)
                .GroupBy(h => h.Answer)
                .Select(g => (Chance: g.Sum(h => h.Weight), All: g.OrderByDescending(h => h.Weight).ToList()))
                .OrderByDescending(g => g.Chance)
                .Where(g => g.Chance > 0.01)
                .Select(g => new Outlook(
                    Words(table, question, g.All[0].Hypothesis), g.Chance,
                    [.. g.All.GroupBy(h => h.Hypothesis.Repair, StringComparer.Ordinal).OrderByDescending(r => r.Sum(h => h.Weight)).Select(r => r.Key).Take(MostRepairs)],
                    Answered(question, g.All[0].Hypothesis))),
        ];
    }

    private static Evidence Answered(Question question, Hypothesis hypothesis) => question is Question.Volts volts
        ? new Evidence.Measured(volts.Stimulus, volts.Red, volts.Black, Likelihood.Volts(hypothesis.Looks[volts.Stimulus], volts.Red, volts.Black))
        : new Evidence.Seen(question.Stimulus, [.. hypothesis.Looks[question.Stimulus].Signs.Select((sign, o) => (o, sign))]);

    private static string Words(TroubleTable table, Question question, Hypothesis hypothesis)
    {
        var look = hypothesis.Looks[question.Stimulus];
        if (question is Question.Volts volts)
        {
            return FormattableString.Invariant($"about {Likelihood.Volts(look, volts.Red, volts.Black):0.0#} V");
        }

        var healthy = table.Singles[0].Looks[question.Stimulus].Signs;
        var odd = look.Signs.Length != healthy.Length ? [] : Enumerable.Range(0, healthy.Length).Where(o => look.Signs[o] != healthy[o]).ToList();
        return look.Signs.IsEmpty ? "it never comes to rest"
            : odd.Count == 0 ? "all as it should be"
            : string.Join(", ", odd.Take(MostSigns).Select(o => Why.Told(table, o, look.Signs[o]))) + (odd.Count > MostSigns ? FormattableString.Invariant($" and {odd.Count - MostSigns} more") : "");
    }
}
