using Loomwright.Diagnosis;
using Loomwright.Faults;

namespace Loomwright.Tests.Diagnosis;

/// <summary>
/// What eyes and an ohmmeter find at the thing itself, drawn apart from the model: what an open wire came by is drawn once,
/// a strand is hidden for good or not, the leads of the meter have a resistance of their own (judgement).
/// </summary>
internal sealed class Eyes(TroubleTable table, Random random, IReadOnlyList<(Hypothesis Hypothesis, ListedFault Fault)> truth)
{
    private const double StrandHidden = 0.15, LeadsOhms = 0.15, BadAboveOhms = 0.4;

    private readonly List<bool> _seen = [.. truth.Select(t => Seen(t.Fault, random))];

    /// <summary>What a person tells of a check, who errs once in so many.</summary>
    public Evidence.Checked Tell(Check check, double misreads)
    {
        var found = Found(check);
        if (random.NextDouble() >= misreads)
        {
            return new(check, found);
        }

        var others = table.Findable(check);
        return new(check, found is null && !others.IsEmpty ? others[random.Next(others.Length)] : null);
    }

    private string? Found(Check check)
    {
        for (var t = 0; t < truth.Count; t++)
        {
            var trace = truth[t].Hypothesis.Traces.FirstOrDefault(x => x.Check == check);
            if (trace.Found is not null && (check.Kind == CheckKind.Terminals ? _seen[t] : Beeps(truth[t].Fault.Fault)))
            {
                return trace.Found;
            }
        }

        return null;
    }

    private bool Beeps(Fault fault) => fault is not Fault.High high || Math.Round(high.Ohms + (LeadsOhms * ((2 * random.NextDouble()) - 1)), 1) >= BadAboveOhms;

    private static bool Seen(ListedFault listed, Random random)
    {
        if (listed.Fault is Fault.Shorted)
        {
            return random.NextDouble() >= StrandHidden;
        }

        if (listed.Fault is not Fault.Open)
        {
            return true;
        }

        var left = random.NextDouble() * listed.Prior();
        var cause = listed.Causes.FirstOrDefault(c => (left -= c.Times * Priors.Row(c.Kind).For(new PriorOptions())) <= 0);
        return cause.Kind?.Contains("left out", StringComparison.Ordinal) ?? false;
    }
}
