using Loomwright.Checks;
using Loomwright.Findings;
using Loomwright.Simulation;

namespace Loomwright.Tests.Checks;

/// <summary>Rules that operate the bike, on whole bikes with one thing changed.</summary>
public class TriedRuleTests
{
    private static readonly string Sandpiper = Repository.Read("examples/sandpiper/sandpiper.loom.yaml");
    private static readonly string Kittiwake = Repository.Read("examples/kittiwake/kittiwake.loom.yaml");

    [Fact]
    public void LED_lamps_behind_the_old_flasher_leave_it_lit_and_light_the_other_side_through_the_one_tell_tale()
    {
        var codes = Codes(Sandpiper.Replace("category: P21W", "led: 2 W", StringComparison.Ordinal));
        Assert.Contains("flasher-below-its-load", codes);
        Assert.Contains("shared-tell-tale", codes);
    }

    [Fact]
    public void A_rear_brake_that_is_not_joined_on_is_told_beside_the_front_one_that_is()
    {
        var found = Assert.Single(Rules.Check(Examples.Of(Sandpiper).Without("rear brake lead")), f => f.Code == "brake-lights-nothing");
        Assert.Contains("front brake does", found.What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_start_rule_that_forgets_the_gearbox_turns_the_starter_in_gear_with_the_clutch_out_and_with_the_stand_down()
    {
        var found = Rules.Check(Examples.Of(Kittiwake.Replace("when: key and run and start and (neutral or clutch and stand up)", "when: key and run and start", StringComparison.Ordinal)));
        Assert.Equal(["clutch", "side stand"], found.Where(f => f.Code == "starter-turns-in-gear").Select(f => ((Subject.OfPart)f.Where).Part));
    }

    [Fact]
    public void A_start_rule_that_forgets_the_stand_is_told_for_the_stand_alone()
    {
        var found = Rules.Check(Examples.Of(Kittiwake.Replace("(neutral or clutch and stand up)", "(neutral or clutch)", StringComparison.Ordinal)));
        Assert.Equal(["side stand"], found.Where(f => f.Code == "starter-turns-in-gear").Select(f => ((Subject.OfPart)f.Where).Part));
    }

    [Fact]
    public void The_other_kind_of_kill_switch_in_the_feed_is_of_the_wrong_sense() =>
        Assert.Contains("kill-switch-wrong-sense", Codes(Sandpiper.Replace("stops by: opening", "stops by: closing", StringComparison.Ordinal)));

    [Fact]
    public void A_feed_past_the_kill_switch_leaves_it_nothing_to_stop()
    {
        var found = Assert.Single(Rules.Check(Examples.Of(Sandpiper.Replace("from: kill switch.run, to: coil.15", "from: kill switch.feed, to: coil.15", StringComparison.Ordinal))), f => f.Code == "kill-switch-wrong-sense");
        Assert.Contains("stops nothing", found.What, StringComparison.Ordinal);
    }

    [Fact]
    public void What_takes_current_before_the_lock_is_gone_in_the_days_that_ohm_gives()
    {
        // 14 Ah at 12 V into 120 ohm, 0.1 A and what the box and the buttons take asleep: between five and six days.
        var found = Rules.Check(Examples.Of(Kittiwake.Replace("    draw: 1 mA", "    draw: 100 mA", StringComparison.Ordinal))).Where(f => f.Code == "position-drains").ToList();
        Assert.Contains(found, f => f.What.Contains("6 days", StringComparison.Ordinal) || f.What.Contains("5 days", StringComparison.Ordinal));
    }

    [Fact]
    public void At_park_the_tail_lamps_take_the_battery_down_in_hours_and_that_is_a_note()
    {
        var found = Assert.Single(Rules.Check(Examples.Of(Kittiwake)), f => f.Code == "position-drains");
        Assert.Equal(Severity.Note, found.Severity);
        var rig = new Rig(Examples.Of(Kittiwake));
        var amps = rig.Do(new Operation.Set("lock", "park")).Phases[0].Supply.Amps;
        Assert.Contains(FormattableString.Invariant($"{14 / amps:0.#} hours"), found.What, StringComparison.Ordinal);
    }

    private static List<string> Codes(string design) => [.. Rules.Check(Examples.Of(design)).Select(f => f.Code)];
}
