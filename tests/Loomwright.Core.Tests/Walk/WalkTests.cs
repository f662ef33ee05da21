using Loomwright.Design;
using Loomwright.Simulation;
using Loomwright.Walk;

namespace Loomwright.Tests.Walk;

public class WalkTests
{
    private static readonly Loom Sound = Planted.Loom("sound");

    [Fact]
    public void A_sound_design_is_walked_to_its_end_without_a_surprise_and_says_so()
    {
        var walked = Walker.Walk(Sound);

        Assert.True(walked.Complete);
        Assert.Empty(walked.Surprises);
        Assert.Empty(walked.BackFeeds);
        Assert.Equal(8, walked.ControlCombinations);
        Assert.Equal(
            FormattableString.Invariant($"Every position was walked: 8 settings of the controls, {walked.States} states, {walked.Events} operations tried. Computed from the file; your bike was not measured."),
            walked.InWords);
    }

    [Theory]
    [InlineData("sound")]
    [InlineData("stop-dims")]
    [InlineData("main-stays")]
    [InlineData("tail-without-key")]
    [InlineData("horn-resets")]
    [InlineData("shared-tell-tale")]
    [InlineData("back-feed")]
    [InlineData("starter-with-stand-down")]
    public void A_dumb_walker_reaches_the_same_states_and_surprises(string name) => AgreesWithTheDumb(Planted.Loom(name));

    [Theory]
    [InlineData("sandpiper", "horn button", "gearbox", "points", "rear brake", "front brake", "kill switch", "dip switch")]
    [InlineData("kittiwake", "work switch", "side stand", "gearbox", "clutch", "horn button", "rear brake", "run switch", "front brake", "start button", "right button")]
    public void So_it_does_on_the_whole_examples_with_some_switches_taken_off(string example, params string[] off)
    {
        var loom = Examples.Read($"examples/{example}/{example}.loom.yaml");
        AgreesWithTheDumb(loom with
        {
            Parts = loom.Parts.RemoveAll(p => off.Contains(p.Name)),
            Wires = loom.Wires.RemoveAll(w => off.Contains(w.From.Part) || off.Contains(w.To.Part)),
            Functions = loom.Functions.RemoveAll(f => f.Works.NamesUsed().Any(n => off.Contains(n))),
        });
    }

    private static void AgreesWithTheDumb(Loom loom)
    {
        var (walked, states) = Walker.WalkAndKeep(loom, new WalkOptions());
        var (dumbStates, dumbSurprises) = DumbWalker.Walk(loom);

        Assert.True(walked.Complete);
        Assert.Equal(dumbStates.Order(StringComparer.Ordinal), states.Select(s => DumbWalker.Signature(s.State, s.Promised.AsSpan().ToArray())).Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(dumbSurprises.Select(s => (s.Key, s.Value)).Order(), walked.Named());
    }

    [Theory]
    [InlineData("stop-dims")]
    [InlineData("horn-resets")]
    [InlineData("back-feed")]
    public void The_answer_does_not_depend_on_how_many_walk(string name)
    {
        var loom = Planted.Loom(name);
        var alone = Walker.Walk(loom, new WalkOptions { Workers = 1 });
        var four = Walker.Walk(loom, new WalkOptions { Workers = 4 });

        Assert.Equal(Told(alone), Told(four));
    }

    [Fact]
    public void What_a_walk_tells_is_what_a_rig_shows_after_the_same_operations()
    {
        var loom = Planted.Loom("stop-dims");
        var surprise = Walker.Walk(loom).Of(SurpriseKind.Dimmed, "stop");

        var frame = new Rig(loom).Play(surprise.Steps.Select(s => s.Operation))[^1];
        Assert.All(surprise.Parts, p => Assert.Equal(p.Seen, frame.Seen.Single(s => s.Name == p.Part).Symbol.ToString().ToLowerInvariant()));
        Assert.Equal(frame.Controls, surprise.Controls);
    }

    [Fact]
    public void Every_configuration_is_solved_once_and_far_fewer_than_there_are_events()
    {
        var walked = Walker.Walk(Sound);
        Assert.InRange(walked.ConfigurationsSolved, 8, walked.Events);
    }

    [Fact]
    public void No_more_than_two_buttons_are_ever_held()
    {
        var (_, states) = Walker.WalkAndKeep(ThreeButtons, new WalkOptions());
        Assert.Equal(2, states.Max(s => s.State.Positions.AsSpan()[1..].ToArray().Count(p => p == 1)));
    }

    [Fact]
    public void A_walk_that_grew_too_large_says_how_far_it_came_and_never_that_it_saw_every_position()
    {
        var walked = Walker.Walk(Sound, new WalkOptions { MostStates = 10 });

        Assert.Equal(WalkEnd.Limit, walked.End);
        Assert.InRange(walked.States, 11, 30);
        Assert.StartsWith("Not every position was walked, the walk grew too large: everything up to", walked.InWords, StringComparison.Ordinal);
        Assert.EndsWith("Computed from the file; your bike was not measured.", walked.InWords, StringComparison.Ordinal);
    }

    [Fact]
    public void A_walk_that_is_stopped_gives_what_it_found_until_then()
    {
        using var stop = new CancellationTokenSource();
        var told = new List<WalkProgress>();
        var walked = Walker.Walk(Sound, new WalkOptions { Stop = stop.Token, Progress = Tell });

        Assert.Equal(WalkEnd.Stopped, walked.End);
        Assert.Equal(2, told.Count);
        Assert.Contains("the walk was stopped: everything up to 1 operation from rest", walked.InWords, StringComparison.Ordinal);

        void Tell(WalkProgress progress)
        {
            told.Add(progress);
            if (told.Count == 2)
            {
                stop.Cancel();
            }
        }
    }

    [Fact]
    public void A_wire_pulled_out_is_measured_against_the_light_of_the_whole_bike()
    {
        var walked = Walker.Walk(Sound.Without("box X4 to stop lamp feed"), new WalkOptions { Healthy = Sound });
        Assert.Equal(["lock → riding", "front brake → pressed"], walked.Of(SurpriseKind.ShowsNothing, "stop").Steps.Words().OrderDescending());
    }

    private static Loom ThreeButtons => Sound with { Parts = Sound.Parts.Add(Sound.Part("front brake")! with { Name = "spare button" }) };

    private static string Told(Walked walked) => System.Text.Json.JsonSerializer.Serialize(walked);
}
