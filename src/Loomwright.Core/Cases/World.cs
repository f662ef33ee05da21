using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Faults;

namespace Loomwright.Cases;

/// <summary>The circuit with the cause in it, as somebody who looks, measures and checks finds it. It answers what it is asked and tells nothing else.</summary>
internal sealed class World
{
    // What is seen more often than not is seen; a bad joint, from here on by an ohmmeter whose leads are near as much (judgement).
    private const double Seen = 0.5, BadAboveOhms = 0.4;

    private readonly TroubleTable _table;
    private readonly ImmutableArray<Look> _looks;
    private readonly ImmutableArray<Trace> _traces;

    /// <param name="loom">The healthy circuit.</param>
    /// <param name="table">What the search works with; its places are those of the answers.</param>
    /// <param name="causes">What is wrong now.</param>
    /// <param name="accepted">What of the catalogue is the same.</param>
    public World(Loom loom, TroubleTable table, ImmutableArray<Fault> causes, Accepted accepted)
    {
        _table = table;
        _looks = FaultTable.Of(causes.Aggregate(loom, Patch.Apply), new DictionaryOptions { Stimuli = table.Table.Stimuli, Points = table.Table.Points, FullLight = loom, Faults = [] }).Healthy.Looks;
        var traces = new Traces(loom);
        // What is open was in and broke: nobody sees that it was left out.
        var shows = causes.Where(c => c is not Fault.High { Ohms: < BadAboveOhms }).Select(c => c is Fault.Open ? new ListedFault(c, "", []) : accepted.Listed(c));
        _traces = [.. shows.Concat(accepted.NamedBy.Take(1)).SelectMany(traces.Of).Where(t => t.Chance >= Seen)];
    }

    /// <summary>What is answered: all that shows, the reading, or what the check finds.</summary>
    public Evidence Answer(Question question) => question switch
    {
        Question.Of of => new Evidence.Checked(of.Check, _traces.Where(t => t.Check == of.Check && _table.Findable(of.Check).Contains(t.Found)).Select(t => t.Found).FirstOrDefault()),
        _ when _looks[question.Stimulus!.Value].Signs.IsEmpty => new Evidence.NotSure(question.Place),
        Question.Volts v => new Evidence.Measured(v.At, v.Red, v.Black, Math.Round(Likelihood.Volts(_looks[v.At], v.Red, v.Black), 2)),
        _ => new Evidence.Seen(question.Stimulus!.Value, [.. _looks[question.Stimulus!.Value].Signs.Select((sign, o) => (o, sign))]),
    };
}
