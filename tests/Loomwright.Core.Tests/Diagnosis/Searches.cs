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
    private const int MostQuestions = 60;

    private readonly List<(Entry Entry, ListedFault Fault)> _effective =
        [.. table.Table.Entries.Where(e => !e.IsHealthy && e.Class != table.Table.Healthy.Class).SelectMany(e => e.Faults.Select(f => (e, f)))];

    /// <summary>How one session came out.</summary>
    public sealed record Played(Search State, bool First, bool InGroup, int Place, double Share, int Questions, double Minutes, string Truth, string Said);

    /// <summary>The way the next question is chosen.</summary>
    public enum Order
    {
        /// <summary>As the search proposes.</summary>
        Proposed,

        /// <summary>Any that tells anything, drawn.</summary>
        Random,

        /// <summary>First every look as it stands in the table, then the meter from point to point, then the things themselves.</summary>
        Fixed,

        /// <summary>The one that splits nearest to half, whatever it costs.</summary>
        HalfSplit,
    }

    /// <summary>One session with a fault drawn from the priors among those that show.</summary>
    /// <param name="seed">Gives everything that is drawn.</param>
    /// <param name="misreads">How often a person tells a sign or a reading wrong, 0…1.</param>
    /// <param name="order">How questions are chosen.</param>
    /// <param name="tell">Gets every answer.</param>
    public Played One(int seed, double misreads, Order order = Order.Proposed, Action<Trouble, Evidence>? tell = null)
    {
        var random = new Random(seed);
        var truth = Drawn(random);
        var repair = truth.Fault.Repair;
        var world = Truth(random, [truth]);
        var first = FirstOdd(truth.Entry);
        var trouble = Trouble.Begin(table).After(Look(world, random, first, misreads));
        var (questions, minutes) = (0, 0.0);
        while (trouble.State == Search.GoesOn && questions < MostQuestions)
        {
            var question = trouble.Odd is { } odd ? odd.Place.Again() : Chosen(trouble, order, random);
            questions++;
            minutes += question.Minutes;
            var answer = Answer(world, random, question, misreads);
            tell?.Invoke(trouble, answer);
            trouble = trouble.After(answer);
        }

        var place = trouble.Suspects.Select((s, i) => (s, i)).Where(s => s.s.Hypotheses.Any(h => h.Repairs.Contains(repair))).Select(s => s.i + 1).FirstOrDefault();
        return new(
            trouble.State, trouble.Suspects[0].Repair == repair, trouble.Group.Length is > 1 and <= 3 && trouble.Group.Any(s => s.Repair == repair), place,
            trouble.Suspects[0].Share, questions, minutes, truth.Fault.Fault.ToString(), trouble.Suspects[0].Repair);
    }

    /// <summary>One session with two faults; whether the first three name one of them, and whether the other is found after its repair.</summary>
    public (bool First, bool Second) Two(int seed, double misreads)
    {
        var random = new Random(seed);
        (Entry Entry, ListedFault Fault) one, other;
        do
        {
            (one, other) = (Drawn(random), Drawn(random));
        }
        while (one.Fault.Repair == other.Fault.Repair);

        var world = Truth(random, [one, other]);
        string[] repairs = [one.Fault.Repair, other.Fault.Repair];
        var trouble = Finished(Trouble.Begin(table).After(Look(world, random, FirstOdd(one.Entry), misreads)), world, random, misreads);
        if (trouble.Suspects.Take(3).FirstOrDefault(s => s.Hypotheses[0].Repairs.Any(r => repairs.Contains(r))) is not { } found)
        {
            return (false, false);
        }

        var mended = found.Hypotheses[0].Repairs.First(r => repairs.Contains(r));
        var left = mended == repairs[0] ? other : one;
        var after = Truth(random, [left]);
        var hypothesis = table.Singles.First(h => h.Repair == mended);
        trouble = trouble.Mended(new Suspect(mended, found.Share, [hypothesis]));
        trouble = Finished(trouble.After(Look(after, random, FirstOdd(left.Entry), misreads)), after, random, misreads);
        return (true, trouble.Suspects.Take(3).Any(s => s.Repair == left.Fault.Repair));
    }

    private Trouble Finished(Trouble trouble, There world, Random random, double misreads)
    {
        for (var q = 0; trouble.State == Search.GoesOn && q < MostQuestions; q++)
        {
            trouble = trouble.After(Answer(world, random, trouble.Odd is { } odd ? odd.Place.Again() : trouble.Questions[0], misreads));
        }

        return trouble;
    }

    private (Entry Entry, ListedFault Fault) Drawn(Random random)
    {
        var left = random.NextDouble() * _effective.Sum(e => e.Fault.Prior());
        return _effective.Find(e => (left -= e.Fault.Prior()) <= 0) is { Entry: not null } drawn ? drawn : _effective[^1];
    }

    // What the fault itself changes makes a person ask, not that all lamps are a little weak.
    private int FirstOdd(Entry truth) => Enumerable.Range(0, truth.Looks.Length).First(s => !truth.Looks[s].LooksLike(table.Table.Healthy.Looks[s]));

    // The bike as it stands there: nothing in it is exactly what its label says.
    private There Truth(Random random, IReadOnlyList<(Entry Entry, ListedFault Fault)> wrong)
    {
        ImmutableArray<Fault> faults = [.. wrong.Select(w => w.Fault.Fault)];
        var world = World.Drawn(faults.Aggregate(loom, Patch.Apply), random, faults);
        return new(world, loom, table.Table, new Eyes(table, random, [.. wrong.Select(w => (table.Singles.First(h => h.Looks == w.Entry.Looks && h.Repair == w.Fault.Repair), w.Fault))]));
    }

    // The three others choose among all that tells anything at all and harms nothing, not among the search's best.
    private static Question Chosen(Trouble trouble, Order order, Random random)
    {
        var all = order == Order.Proposed ? [] : trouble.Every().ToList();
        return all.Count == 0 ? trouble.Questions[0] : order switch
        {
            Order.Random => all[random.Next(all.Count)],
            Order.Fixed => all.OrderBy(q => q is Question.Look ? 0 : q is Question.Volts ? 1 : 2).ThenBy(q => q.Stimulus).ThenBy(q => (q as Question.Volts)?.Red).ThenBy(q => (q as Question.Of)?.Check.Name, StringComparer.Ordinal).First(),
            Order.HalfSplit => all.MinBy(q => Math.Abs(q.Largest - 0.5))!,
            _ => trouble.Questions[0],
        };
    }

    private Evidence Answer(There world, Random random, Question question, double misreads) =>
        question is Question.Volts v ? Reading(world, random, v, misreads)
        : question is Question.Of of ? world.Eyes.Tell(of.Check, misreads)
        : Look(world, random, question.Stimulus!.Value, misreads);

    private Evidence Look(There world, Random random, int stimulus, double misreads)
    {
        var signs = world.After(stimulus).Signs;
        if (signs.IsEmpty)
        {
            return new Evidence.NotSure(new Asked(stimulus));
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

    private static Evidence Reading(There world, Random random, Question.Volts asked, double misreads)
    {
        var look = world.After(asked.At);
        if (look.Volts.IsEmpty)
        {
            return new Evidence.NotSure(asked.Place);
        }

        var volts = Likelihood.Volts(look, asked.Red, asked.Black);
        var shown = (volts * (1 + (0.01 * ((2 * random.NextDouble()) - 1)))) + (0.02 * ((2 * random.NextDouble()) - 1));
        return new Evidence.Measured(asked.At, asked.Red, asked.Black, random.NextDouble() < misreads ? 14 * random.NextDouble() : Math.Round(shown, 2));
    }
}
