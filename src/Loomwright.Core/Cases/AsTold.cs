using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.ProjectFile;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Cases;

/// <summary>What one sighting of a case gives the search: signs as a person at the bike would tap them, and the rest, bands and what is told with a “not”, as how well each fault shows it.</summary>
internal sealed class AsTold
{
    // What is told is wrong or told otherwise than meant once in ten; what does not hold is told all the same once in twenty (judgement).
    private const double Holds = 0.9, HoldsNot = 0.05;

    private readonly Loom _loom;
    private readonly ImmutableArray<(int Observable, byte Sign)> _signs;
    private readonly Sighting _rest;

    /// <param name="loom">The healthy circuit.</param>
    /// <param name="sighting">What was told; every name in it means something there.</param>
    public AsTold(Loom loom, Sighting sighting)
    {
        _loom = loom;
        Done = Stimulus.Of([.. sighting.Do.Select(d => Trial.Operation(d)!)]);
        var observables = Viewer.Observables(Wiring.Of(loom));
        var all = sighting.See.SelectMany(s => s.Words.Select(w => (s.What, Word: w, Sign: Sign(observables, s.What, w)))).ToList();
        _signs = [.. all.Where(a => a.Sign is not null).Select(a => a.Sign!.Value)];
        _rest = sighting with { See = [.. all.Where(a => a.Sign is null).Select(a => new Told(a.What, [a.Word]))], Mended = [] };
    }

    /// <summary>What was done.</summary>
    public Stimulus Done { get; }

    /// <summary>The signs that were told; null when none was.</summary>
    public Evidence? Seen(TroubleTable table) => _signs.IsEmpty ? null : new Evidence.Seen(table.Place(Done)!.Value, _signs);

    /// <summary>How well something shows the rest, above 0 to 1.</summary>
    public double Chance(Hypothesis hypothesis) => _rest.See.IsEmpty ? 1
        : Trial.Of(_loom, new Case("", "", [.. hypothesis.Faults.Take(hypothesis.Repairs.Length).Select(f => f.Fault.ToString())], [_rest], [], [], null))
            .Compared.Aggregate(1.0, (p, c) => p * (c.WithCause.Holds ? Holds : HoldsNot));

    private static (int, byte)? Sign(ImmutableArray<Observable> observables, string what, string word) =>
        Enumerable.Range(0, observables.Length).Where(o => Names.Same(observables[o].Name, what)).SelectMany(o => Report.WordsOf(observables[o]).Where(w => w.Word == Plain(word)).Select(w => ((int, byte)?)(o, w.Sign))).FirstOrDefault();

    // A relay is told of as “let go” here and “released” there.
    private static string Plain(string word) => word == "let go" ? "released" : word;
}
