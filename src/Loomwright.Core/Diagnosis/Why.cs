using System.Collections.Immutable;
using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>Why something is suspected, in sentences a person at the bench can follow.</summary>
public static class Why
{
    private const int MostSigns = 3;

    /// <summary>What of the answers it explains, what stays as it should, what it leaves open, and what else it would show.</summary>
    public static ImmutableArray<string> Of(TroubleTable table, ImmutableArray<Evidence> answers, Hypothesis hypothesis)
    {
        var words = ImmutableArray.CreateBuilder<string>();
        var seen = answers.OfType<Evidence.Seen>().SelectMany(a => a.Signs.Select(s => new Sign(a.Stimulus, s.Observable, s.Sign))).ToList();
        var healthy = table.Singles[0].Looks;
        var odd = seen.Where(s => !healthy[s.Stimulus].Signs.IsEmpty && healthy[s.Stimulus].Signs[s.Observable] != s.Told).ToList();
        var explained = odd.Where(s => Shows(hypothesis, s)).ToList();
        if (explained.Count > 0)
        {
            words.Add($"It explains that {Listed(explained.Select(s => Told(table, s)))}.");
        }

        var lights = seen.Where(s => !odd.Contains(s) && table.Table.Observables[s.Observable].Sense == Sense.BoxLight && (Symbol)s.Told != Symbol.Dark && explained.Exists(e => e.Stimulus == s.Stimulus)).ToList();
        if (lights.Count > 0)
        {
            words.Add($"The box does its part: {Listed(lights.Select(s => Told(table, s)))}, as it should.");
        }

        foreach (var measured in answers.OfType<Evidence.Measured>().Where(m => Differs(healthy[m.Stimulus], m) && !Differs(hypothesis.Looks[m.Stimulus], m)))
        {
            words.Add(FormattableString.Invariant($"It explains {measured.Volts:0.0#} V from {table.Table.Points[measured.Red]} to {TroubleText.Black(table, measured.Black)}, where {Likelihood.Volts(healthy[measured.Stimulus], measured.Red, measured.Black):0.0#} V should be."));
        }

        foreach (var found in answers.OfType<Evidence.Checked>().Where(a => hypothesis.Traces.Any(t => t.Check == a.Check)))
        {
            words.Add(found.Found is null ? $"At the {found.Check.Name} nothing of it was seen."
                : hypothesis.Traces.Any(t => t.Check == found.Check && t.Found == found.Found) ? $"It was seen there: {found.Found}."
                : $"It does not explain {found.Found}.");
        }

        var open = odd.Where(s => !Shows(hypothesis, s)).ToList();
        if (open.Count > 0)
        {
            words.Add($"It does not explain that {Listed(open.Select(s => Told(table, s)))}.");
        }

        if (Elsewhere(table, answers, hypothesis) is { } elsewhere)
        {
            words.Add(elsewhere);
        }

        return words.ToImmutable();
    }

    /// <summary>Between which volts a reading is where nothing is wrong; null where hardly anything holds a probe's point, or there is no answer.</summary>
    public static (double Least, double Most)? Band(TroubleTable table, Evidence.Measured read) =>
        table.Singles[0].Looks[read.Stimulus] is { Volts.IsEmpty: false } look && !Likelihood.IsLoose(look, read.Red, read.Black)
        && Likelihood.Volts(look, read.Red, read.Black) is var volts && Slack(look, volts) is var slack ? (volts - slack, volts + slack) : null;

    /// <summary>A sign with its name, as <c>rear cluster stop is dark</c>.</summary>
    public static string Told(TroubleTable table, int observable, byte sign)
    {
        var what = table.Table.Observables[observable];
        return what.Sense switch
        {
            Sense.BoxLight => $"the light at {what.Name} {(what.Word(sign) == "flashes" ? "flashes" : $"is {what.Word(sign)}")}",
            Sense.Sight when (Symbol)sign is Symbol.Dark or Symbol.Dim or Symbol.Lit or Symbol.Silent => $"{Words.Name(what.Name)} is {what.Word(sign)}",
            Sense.Sight => $"{Words.Name(what.Name)} {what.Word(sign)}",
            _ => $"{what.Name} is {what.Word(sign)}",
        };
    }

    private static string Told(TroubleTable table, Sign sign) => Told(table, sign.Observable, sign.Told);

    // Somewhere not looked at yet where it would show and the healthy bike would not.
    private static string? Elsewhere(TroubleTable table, ImmutableArray<Evidence> answers, Hypothesis hypothesis)
    {
        var healthy = table.Singles[0].Looks;
        for (var s = 0; s < healthy.Length; s++)
        {
            var (would, should) = (hypothesis.Looks[s].Signs, healthy[s].Signs);
            if (would.IsEmpty || should.IsEmpty || answers.Any(a => a.Place.Stimulus == s))
            {
                continue;
            }

            for (var o = 0; o < would.Length; o++)
            {
                if (would[o] != should[o] && table.Table.Observables[o].Sense == Sense.Sight)
                {
                    return $"If it is so, {Told(table, o, would[o])} with {table.Table.Stimuli[s].Name}.";
                }
            }
        }

        return null;
    }

    private static bool Shows(Hypothesis hypothesis, Sign sign) => hypothesis.Looks[sign.Stimulus].Signs is { IsEmpty: false } signs && signs[sign.Observable] == sign.Told;

    private static bool Differs(Look look, Evidence.Measured measured)
    {
        var volts = Likelihood.Volts(look, measured.Red, measured.Black);
        return Math.Abs(measured.Volts - volts) > Slack(look, volts);
    }

    private static double Slack(Look look, double volts) => 3 * Misreading.Spread(volts, look.SupplyAmps);

    private static string Listed(IEnumerable<string> all)
    {
        var names = all.Distinct(StringComparer.Ordinal).ToList();
        var more = names.Count > MostSigns ? FormattableString.Invariant($" and {names.Count - MostSigns} more") : "";
        var shown = names.Take(MostSigns).ToList();
        return more.Length > 0 || shown.Count == 1 ? string.Join(", ", shown) + more : $"{string.Join(", ", shown.SkipLast(1))} and {shown[^1]}";
    }

    private readonly record struct Sign(int Stimulus, int Observable, byte Told);
}
