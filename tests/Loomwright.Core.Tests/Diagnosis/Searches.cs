using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Faults;
using Loomwright.Simulation;

namespace Loomwright.Tests.Diagnosis;

/// <summary>
/// Searches played against a world drawn apart from the model: battery, lamps, contacts and meter are off by what they are
/// in a workshop, the person errs. The search gets the answers and nothing else.
/// </summary>
internal sealed class Searches(Loom loom, TroubleTable table)
{
    private const double ModelMisreads = 0.02;
    private const int MostQuestions = 60;

    private readonly List<Entry> _effective = [.. table.Table.Entries.Where(e => !e.IsHealthy && e.Class != table.Table.Healthy.Class)];

    /// <summary>How one session came out.</summary>
    public sealed record Played(Search State, bool First, bool InGroup, int Place, double Share, int Questions, double Minutes, string Truth, string Said);

    /// <summary>The way the next question is chosen.</summary>
    public enum Order
    {
        /// <summary>As the search proposes.</summary>
        Proposed,

        /// <summary>Any of them, drawn.</summary>
        Random,

        /// <summary>As they stand in the table.</summary>
        Fixed,

        /// <summary>The one that splits nearest to half, whatever it costs.</summary>
        HalfSplit,
    }

    /// <summary>One session with a fault drawn from the priors among those that show.</summary>
    /// <param name="seed">Gives everything that is drawn.</param>
    /// <param name="misreads">How often a person tells a sign or a reading wrong, 0…1.</param>
    /// <param name="order">How questions are chosen.</param>
    public Played One(int seed, double misreads, Order order = Order.Proposed)
    {
        var random = new Random(seed);
        var truth = Drawn(random);
        var repair = table.Singles[table.Table.Entries.IndexOf(truth)].Repair;
        var world = Truth(random, [truth.Faults[0].Fault]);
        var first = FirstOdd(world, truth);
        var trouble = Trouble.Begin(table).After(Look(world, random, first, misreads));
        var (questions, minutes) = (0, 0.0);
        while (trouble.State == Search.GoesOn && questions < MostQuestions)
        {
            var question = trouble.Odd is { } odd ? Again(odd) : Chosen(trouble, order, random);
            questions++;
            minutes += question.Minutes;
            trouble = trouble.After(Answer(world, random, question, misreads));
        }

        var place = trouble.Suspects.Select((s, i) => (s, i)).Where(s => s.s.Hypotheses.Any(h => h.Repairs.Contains(repair))).Select(s => s.i + 1).FirstOrDefault();
        return new(
            trouble.State, trouble.Suspects[0].Repair == repair, trouble.Group.Length is > 1 and <= 3 && trouble.Group.Any(s => s.Repair == repair), place,
            trouble.Suspects[0].Share, questions, minutes, truth.Faults[0].Fault.ToString(), trouble.Suspects[0].Repair);
    }

    /// <summary>One session with two faults; whether the first three name one of them, and whether the other is found after its repair.</summary>
    public (bool First, bool Second) Two(int seed, double misreads)
    {
        var random = new Random(seed);
        Entry one, other;
        do
        {
            (one, other) = (Drawn(random), Drawn(random));
        }
        while (one.Faults[0].Repair == other.Faults[0].Repair);

        var world = Truth(random, [one.Faults[0].Fault, other.Faults[0].Fault]);
        string[] repairs = [RepairOf(one), RepairOf(other)];
        var trouble = Finished(Trouble.Begin(table).After(Look(world, random, FirstOdd(world, one), misreads)), world, random, misreads);
        if (trouble.Suspects.Take(3).FirstOrDefault(s => s.Hypotheses[0].Repairs.Any(r => repairs.Contains(r))) is not { } found)
        {
            return (false, false);
        }

        var mended = found.Hypotheses[0].Repairs.First(r => repairs.Contains(r));
        var left = mended == repairs[0] ? other : one;
        var after = Truth(random, [left.Faults[0].Fault]);
        var hypothesis = table.Singles.First(h => h.Repair == mended);
        trouble = trouble.Mended(new Suspect(mended, found.Share, [hypothesis]));
        trouble = Finished(trouble.After(Look(after, random, FirstOdd(after, left), misreads)), after, random, misreads);
        return (true, trouble.Suspects.Take(3).Any(s => s.Repair == RepairOf(left)));
    }

    private Trouble Finished(Trouble trouble, Entry world, Random random, double misreads)
    {
        for (var q = 0; trouble.State == Search.GoesOn && q < MostQuestions; q++)
        {
            trouble = trouble.After(Answer(world, random, trouble.Odd is { } odd ? Again(odd) : trouble.Questions[0], misreads));
        }

        return trouble;
    }

    private string RepairOf(Entry entry) => table.Singles[table.Table.Entries.IndexOf(entry)].Repair;

    private Entry Drawn(Random random)
    {
        var left = random.NextDouble() * _effective.Sum(e => e.Prior);
        return _effective.FirstOrDefault(e => (left -= e.Prior) <= 0) ?? _effective[^1];
    }

    private int FirstOdd(Entry world, Entry truth)
    {
        var shows = Enumerable.Range(0, world.Looks.Length).Where(s => !world.Looks[s].LooksLike(table.Table.Healthy.Looks[s])).ToList();
        return shows.Count > 0 ? shows[0] : Enumerable.Range(0, world.Looks.Length).First(s => !truth.Looks[s].LooksLike(table.Table.Healthy.Looks[s]));
    }

    // The bike as it stands there: nothing in it is exactly what its label says.
    private Entry Truth(Random random, ImmutableArray<Fault> faults)
    {
        var world = World.Drawn(faults.Aggregate(loom, Patch.Apply), random, faults);
        return FaultTable.Of(world, new DictionaryOptions { Stimuli = table.Table.Stimuli, Points = table.Table.Points, FullLight = loom, Faults = [], Workers = 1 }).Healthy;
    }

    private static Question Again(Evidence odd) => odd is Evidence.Measured m ? new Question.Volts(m.Stimulus, m.Red, m.Black, 0.8, 0) : new Question.Look(odd.Stimulus, 0.3, 0);

    private static Question Chosen(Trouble trouble, Order order, Random random) => order switch
    {
        Order.Random => trouble.Questions[random.Next(trouble.Questions.Length)],
        Order.Fixed => trouble.Questions.OrderBy(q => q.Stimulus).ThenBy(q => q is Question.Volts v ? v.Red : -1).First(),
        Order.HalfSplit => trouble.Questions.MinBy(q => Math.Abs(trouble.Outlooks(q).Select(o => o.Chance).DefaultIfEmpty(1).Max() - 0.5))!,
        _ => trouble.Questions[0],
    };

    private Evidence Answer(Entry world, Random random, Question question, double misreads) =>
        question is Question.Volts v ? Reading(world, random, v, misreads) : Look(world, random, question.Stimulus, misreads);

    private Evidence Look(Entry world, Random random, int stimulus, double misreads)
    {
        var signs = world.Looks[stimulus].Signs;
        if (signs.IsEmpty)
        {
            return new Evidence.NotSure(stimulus);
        }

        // A person errs once in so many looks, at one thing.
        var slip = random.NextDouble() < misreads ? random.Next(signs.Length) : -1;
        return new Evidence.Seen(stimulus, [.. signs.Select((sign, o) => (o, o == slip ? Other(o, sign, random) : sign))]);
    }

    private byte Other(int observable, byte sign, Random random)
    {
        var others = Report.WordsOf(table.Table.Observables[observable]).Select(w => w.Sign).Where(s => s != sign && table.CanShow(observable, s)).ToList();
        return others.Count == 0 ? sign : others[random.Next(others.Count)];
    }

    private static Evidence Reading(Entry world, Random random, Question.Volts asked, double misreads)
    {
        var look = world.Looks[asked.Stimulus];
        if (look.Volts.IsEmpty)
        {
            return new Evidence.NotSure(asked.Stimulus, asked.Red, asked.Black);
        }

        var volts = Likelihood.Volts(look, asked.Red, asked.Black);
        var shown = (volts * (1 + (0.01 * ((2 * random.NextDouble()) - 1)))) + (0.02 * ((2 * random.NextDouble()) - 1));
        return new Evidence.Measured(asked.Stimulus, asked.Red, asked.Black, random.NextDouble() < misreads ? 14 * random.NextDouble() : Math.Round(shown, 2));
    }
}
