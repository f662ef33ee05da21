using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench.OnTheBike;

/// <summary>The second plan: the finished loom on the bike, from dead checks to charging. Nothing is connected in it; everything is.</summary>
public static class BikePlan
{
    /// <summary>Makes it of a design. No stage while <c>check</c> finds a stop or there is no supply; the open points then say so.</summary>
    public static Plan For(Loom loom)
    {
        var found = Rules.Check(loom);
        ImmutableArray<Finding> stops = [.. found.Where(f => f.Severity == Severity.Stop)];
        ImmutableArray<string> open = [.. found.Where(f => f.Severity == Severity.Look).Select(f => $"As drawn: {f.What}")];
        if (!stops.IsEmpty || new Paths(loom).Source is null)
        {
            return new Plan(Title(loom), [], open.Add(stops.IsEmpty ? "No battery is in the file: there is nothing to power the bike from." : "Nothing is powered before that is put right."))
            {
                PutRightFirst = stops,
                Whole = loom,
            };
        }

        var survey = new Survey(loom);
        var bike = new Everything(loom, survey);
        ImmutableArray<Stage?> stages =
        [
            new DeadChecks(bike).Stage(0),
            new FirstPower(bike).Stage(1),
            new Singles(bike).Stage(2),
            new Pairs(bike).Stage(3),
            new Drops(bike).Stage(4),
            new Singles(bike).Own(5),
            new KeyOff(bike).Stage(6),
            new Cranking(bike).Stage(7),
            new Charging(bike).Stage(8),
        ];
        ImmutableArray<Stage> numbered = [.. stages.OfType<Stage>().Select((s, i) => Renumbered(s, i))];
        return new Plan(Title(loom), numbered, [.. open, .. Open(survey, bike), .. numbered.SelectMany(s => HiddenShorts.Of(s.Steps, new FeedSide(bike.Paths)))]) { Whole = loom };
    }

    private static string Title(Loom loom) => $"{loom.Name}: plan on the bike";

    private static Stage Renumbered(Stage stage, int number) => stage with { Number = number, Steps = Numbered.Of(number, stage.Steps) };

    private static IEnumerable<string> Open(Survey survey, Everything bike)
    {
        foreach (var load in survey.NeverOn)
        {
            yield return $"{load}: nothing that was tried brings it on.";
        }

        if (bike.Engine is null)
        {
            yield return "No alternator is in the file, so charging is not computed: 13.5 V to 15 V at 5000 is common practice.";
        }

        if (!survey.Loads.Any(l => l.Cranks))
        {
            yield return "No starter is in the file, so cranking is not computed.";
        }

        yield return "On the bike: lighting law varies by country and first-use date. Ask the inspector.";
    }
}
