using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Faults;
using Loomwright.Parts;
using Loomwright.ProjectFile;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Cases;

/// <summary>
/// A told case put to the search for a cause: first by what was told alone, then with the search's own questions, each answered by
/// simulating the circuit with the cause in it. The search gets the design, what was told and the answers, and nothing else.
/// </summary>
/// <param name="Account">Title of the account.</param>
/// <param name="Grade">C: cause found and the repair worked. R: a maker's recall. H: a rule told by the trade.</param>
/// <param name="Cause">Text ids of the faults that were there together.</param>
/// <param name="Accept">Repairs that count as naming the cause, as the account tells them.</param>
/// <param name="Stages">One, and one more for each repair the account tells of before it goes on.</param>
/// <param name="Problems">Names and words of the case that mean nothing in this circuit; then there is no stage.</param>
public sealed record CaseSearch(
    string Account, string Grade, ImmutableArray<string> Cause, ImmutableArray<string> Accept, ImmutableArray<CaseStage> Stages, ImmutableArray<Problem> Problems)
{
    /// <summary>So many repairs are what a person is ready to try.</summary>
    public const int Few = 3;

    private const int MostQuestions = 60;

    /// <summary>The place of the cause by what was told alone, from 1: of several stages the worst; null when it is not among what is listed.</summary>
    public int? ToldRank => Worst(s => s.ToldRank);

    /// <summary>The same after the search has asked.</summary>
    public int? AskedRank => Worst(s => s.AskedRank);

    /// <summary>Plays the whole case.</summary>
    internal static CaseSearch Of(Loom loom, Case told)
    {
        if (Trial.Of(loom, told) is { Problems.IsEmpty: false } trial)
        {
            return new(told.Account, told.Grade, told.Cause, told.Accept, [], trial.Problems);
        }

        ImmutableArray<Fault> causes = [.. told.Cause.Select(id => FaultText.Read(id, loom).Fault!)];
        var accepted = Accepted.Of(loom, told);
        var tellings = told.Saw.Select(s => (Sighting: s, As: new AsTold(loom, s))).ToList();
        var table = TroubleTable.Of(loom, tellings.Select(t => t.As.Done), new PriorOptions { Reused = [.. loom.Parts.Select(p => p.Name)] });
        var stages = ImmutableArray.CreateBuilder<CaseStage>();
        foreach (var stage in tellings.GroupBy(t => Repaired(told, t.Sighting)))
        {
            var mended = stage.Aggregate(told.Cause, (all, t) => [.. all.Intersect(t.Sighting.Mended, Names.Comparer)]);
            ImmutableArray<Fault> left = [.. causes.Where(c => !mended.Contains(c.ToString(), Names.Comparer))];
            var repairs = left.SelectMany(accepted.For).ToHashSet(StringComparer.Ordinal);
            var begun = Trouble.Begin(table.Weighed(h => stage.Aggregate(1.0, (p, t) => p * t.As.Chance(h))), [.. stage.Select(t => t.As.Seen(table)).OfType<Evidence>()]);
            var asked = Asked(begun, new World(loom, table, left, accepted));
            stages.Add(asked with { Accepted = [.. repairs.Order(StringComparer.Ordinal)] });
            if (asked.Asked.Suspects.FirstOrDefault(s => s.Hypotheses[0].Repairs.Any(repairs.Contains)) is not { } found)
            {
                break;
            }

            table = asked.Asked.Mended(found).Table;
        }

        return new(told.Account, told.Grade, told.Cause, told.Accept, stages.ToImmutable(), []);
    }

    // How many repairs the account had told of by then: it goes on in a new stage after each.
    private static int Repaired(Case told, Sighting now)
    {
        var (most, stage) = (0, 0);
        foreach (var sighting in told.Saw.Take(told.Saw.IndexOf(now) + 1).Skip(1))
        {
            stage += sighting.Mended.Length > Math.Max(most, told.Saw[0].Mended.Length) ? 1 : 0;
            most = Math.Max(most, sighting.Mended.Length);
        }

        return stage;
    }

    private static CaseStage Asked(Trouble begun, World world)
    {
        var (trouble, steps) = (begun, ImmutableArray.CreateBuilder<(Question, Evidence)>());
        while (trouble.State == Search.GoesOn && steps.Count < MostQuestions)
        {
            var question = trouble.Odd is { } odd ? odd.Place.Again() : trouble.Questions[0];
            var answer = world.Answer(question);
            steps.Add((question, answer));
            trouble = trouble.After(answer);
        }

        return new(begun, trouble, steps.ToImmutable(), []);
    }

    private int? Worst(Func<CaseStage, int?> rank) => Stages.IsEmpty || Stages.Any(s => rank(s) is null) ? null : Stages.Max(rank);
}

/// <summary>What came of one stage of a case.</summary>
/// <param name="Told">By what was told alone.</param>
/// <param name="Asked">After the search's own questions.</param>
/// <param name="Steps">The questions with their answers.</param>
/// <param name="Accepted">The repairs that name the cause, as the catalogue words them.</param>
public sealed record CaseStage(Trouble Told, Trouble Asked, ImmutableArray<(Question Question, Evidence Answer)> Steps, ImmutableArray<string> Accepted)
{
    /// <summary>Place of the cause by what was told alone, from 1; null when it is not listed.</summary>
    public int? ToldRank => Rank(Told);

    /// <summary>The same after the search has asked.</summary>
    public int? AskedRank => Rank(Asked);

    private int? Rank(Trouble trouble) => trouble.Suspects.Select((s, i) => (s, i))
        .Where(s => s.s.Hypotheses[0].Repairs.Any(r => Accepted.Contains(r, StringComparer.Ordinal))).Select(s => (int?)(s.i + 1)).FirstOrDefault();
}
