using Loomwright.Walk;

namespace Loomwright.Tests.Walk;

/// <summary>Design errors a builder makes, each found with the fewest operations that show it.</summary>
public class PlantedTests
{
    [Fact]
    public void The_stop_lamp_dims_when_the_indicator_flashes_through_the_ground_they_share()
    {
        var walked = Walker.Walk(Planted.Loom("stop-dims"));
        var dims = walked.Of(SurpriseKind.Dimmed, "stop");

        Assert.Equal(3, dims.Steps.Length);
        Assert.Equal(["front brake → pressed", "left button → pressed", "lock → riding"], dims.Steps.Words().Order());
        Assert.Equal([new PartSurprise("stop lamp", "lit", "dim")], dims.Parts);
        Assert.False(dims.DependsOnTiming);
    }

    [Fact]
    public void The_main_beam_stays_on_with_dip()
    {
        var stays = Assert.Single(Walker.Walk(Planted.Loom("main-stays")).Surprises);

        Assert.Equal((SurpriseKind.NotAskedFor, "main beam"), (stays.Kind, stays.Function));
        Assert.Equal(["dip switch → set", "light switch → set", "lock → riding"], stays.Steps.Words().Order());
        Assert.Equal([new PartSurprise("headlamp main", "dark", "lit")], stays.Parts);
    }

    [Fact]
    public void The_tail_lamp_burns_with_the_key_out()
    {
        var burns = Assert.Single(Walker.Walk(Planted.Loom("tail-without-key")).Surprises);

        Assert.Equal((SurpriseKind.NotAskedFor, "tail"), (burns.Kind, burns.Function));
        Assert.Equal(["light switch → set"], burns.Steps.Words());
    }

    [Fact]
    public void The_horn_resets_the_box_on_a_weak_supply()
    {
        var resets = Walker.Walk(Planted.Loom("horn-resets")).Surprises.Single(s => s.Kind == SurpriseKind.SwitchesByItself);

        Assert.Equal(["horn button → pressed", "lock → riding"], resets.Steps.Words().Order());
        Assert.Contains(resets.Events, e => e.Contains("box resets again and again", StringComparison.Ordinal));
    }

    [Fact]
    public void The_starter_turns_with_the_stand_down()
    {
        var turns = Assert.Single(Walker.Walk(Planted.Loom("starter-with-stand-down")).Surprises);

        Assert.Equal((SurpriseKind.NotAskedFor, "starter"), (turns.Kind, turns.Function));
        Assert.Equal(["lock → riding", "start button → pressed"], turns.Steps.Words().Order());
        Assert.Equal([new PartSurprise("starter", "rests", "turns")], turns.Parts);
        Assert.Contains(turns.Controls, c => c is { Control: "side stand", Position: "down" });
    }

    [Fact]
    public void A_shared_tell_tale_lights_both_sides_with_led_lamps()
    {
        var walked = Walker.Walk(Planted.Loom("shared-tell-tale"));
        var right = walked.Of(SurpriseKind.NotAskedFor, "right");

        Assert.Equal(["left switch → set", "lock → riding"], right.Steps.Words().Order());
        Assert.Equal([new PartSurprise("right indicator", "dark", "flashing")], right.Parts);
    }

    [Fact]
    public void A_back_feed_keeps_the_box_awake_with_the_main_fuse_out()
    {
        var walked = Walker.Walk(Planted.Loom("back-feed"));
        var feed = Assert.Single(walked.BackFeeds);
        var stop = walked.Of(SurpriseKind.NotAskedFor, "stop");

        Assert.Equal(("box", "X4"), (feed.Box, feed.Terminal));
        Assert.Equal(["main fuse → out", "park switch → set"], feed.Steps.Words().Select(w => w.Split(',')[0]).Order());
        Assert.Equal(["front brake → pressed", "lock → riding", "main fuse → out", "park switch → set"], stop.Steps.Words().Select(w => w.Split(',')[0]).Order());
    }
}
