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
        var all = question is Question.Of check ? OfCheck(belief, check.Check) : OfLook(table, belief, question);
        return
        [
            .. all.GroupBy(a => a.Key).Select(Told).GroupBy(g => g.Words, StringComparer.Ordinal)
                .Select(g => (Words: g.Key, Chance: g.Sum(a => a.Chance), Told: g.MaxBy(a => a.Chance).Likeliest, All: g.SelectMany(a => a.All).ToList()))
                .OrderByDescending(g => g.Chance)
                .Where(g => g.Chance > 0.01)
                .Select(g => new Outlook(
                    g.Words, g.Chance,
                    [.. g.All.GroupBy(a => a.Hypothesis.Repair, StringComparer.Ordinal).OrderByDescending(r => r.Sum(a => a.Weight)).Select(r => r.Key).Take(MostRepairs)],
                    g.Told.Evidence())),
        ];
    }

    // Of what is not told apart, the words that most of it would be told in, and the likeliest that is.
    private static (string Words, double Chance, One Likeliest, List<One> All) Told(IEnumerable<One> alike)
    {
        var all = alike.ToList();
        var words = all.GroupBy(a => a.Words(), StringComparer.Ordinal).MaxBy(w => w.Sum(a => a.Weight))!;
        return (words.Key, all.Sum(a => a.Weight), words.MaxBy(a => a.Weight)!, all);
    }

    private static IEnumerable<One> OfLook(TroubleTable table, Belief belief, Question question)
    {
        var answers = table.Asking(belief.All).Answers(belief.Weights, belief.BatteryPlace, question);
        return Enumerable.Range(0, answers.Length).Where(e => answers[e] >= 0).Select(e => new One(
            answers[e], belief.Weights[e], belief.All[e], () => Words(table, question, belief.All[e]), () => Answered(question, belief.All[e])));
    }

    private static IEnumerable<One> OfCheck(Belief belief, Check check) =>
        from weighed in belief.All.Zip(belief.Weights)
        let shows = weighed.First.Traces.Where(t => t.Check == check).ToList()
        from found in shows.Select(t => ((string?)t.Found, t.Chance)).Append((null, Math.Max(0, 1 - shows.Sum(t => t.Chance))))
        select new One(found.Item1 ?? "", weighed.Second * found.Item2, weighed.First, () => found.Item1 ?? Check.AsDesigned, () => new Evidence.Checked(check, found.Item1));

    private static Evidence Answered(Question question, Hypothesis hypothesis) => question is Question.Volts volts
        ? new Evidence.Measured(volts.At, volts.Red, volts.Black, Likelihood.Volts(hypothesis.Looks[volts.At], volts.Red, volts.Black))
        : new Evidence.Seen(question.Stimulus!.Value, [.. hypothesis.Looks[question.Stimulus!.Value].Signs.Select((sign, o) => (o, sign))]);

    private static string Words(TroubleTable table, Question question, Hypothesis hypothesis)
    {
        var look = hypothesis.Looks[question.Stimulus!.Value];
        if (question is Question.Volts volts)
        {
            return FormattableString.Invariant($"about {Likelihood.Volts(look, volts.Red, volts.Black):0.0#} V");
        }

        var healthy = table.Singles[0].Looks[question.Stimulus!.Value].Signs;
        var odd = look.Signs.Length != healthy.Length ? [] : Enumerable.Range(0, healthy.Length).Where(o => look.Signs[o] != healthy[o]).ToList();
        return look.Signs.IsEmpty ? "it never comes to rest"
            : odd.Count == 0 ? "all as it should be"
            : string.Join(", ", odd.Take(MostSigns).Select(o => Why.Told(table, o, look.Signs[o]))) + (odd.Count > MostSigns ? FormattableString.Invariant($" and {odd.Count - MostSigns} more") : "");
    }

    // A hypothesis with an answer it may give, and what is needed of that only when it is the likeliest.
    private sealed record One(object Key, double Weight, Hypothesis Hypothesis, Func<string> Words, Func<Evidence> Evidence);
}
