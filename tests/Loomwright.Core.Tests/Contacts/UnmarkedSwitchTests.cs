using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Contacts;

namespace Loomwright.Tests.Contacts;

public sealed class UnmarkedSwitchTests
{
    private static readonly ImmutableArray<string> Three = ["red", "brown", "black"], Turns = ["off", "on", "lights"];

    [Fact]
    public void What_a_table_costs_in_readings_over_common_and_other_tables_is_as_printed()
    {
        var text = new System.Text.StringBuilder("Common tables (no source, common practice), each in every order of its leads, share 0.9 of the weight; all other tables of the size 0.1.\n\n");
        foreach (var table in CommonTable.All)
        {
            text.Append(CultureInfo.InvariantCulture, $"{table.Leads} leads, {table.Positions.Length} positions: {table.Name} ({CommonTable.TableText(table.Positions)})\n");
        }

        text.Append("\n| leads | positions | until named, average | worst | named wrong, share | until measured, average | worst | pairs × positions | to tell all apart no order needs fewer: average | worst | with clips, put on a pair until named: average | worst | pairs |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|\n");
        foreach (var (leads, positions) in new[] { (2, 2), (3, 2), (3, 3), (4, 2), (4, 3) })
        {
            var cost = ReadingsNeeded.Of(leads, positions);
            text.Append(CultureInfo.InvariantCulture, $"| {leads} | {positions} | {cost.Average:0.00} | {cost.Worst} | {cost.TakenForAnother:0.000} | {cost.Measured:0.00} | {cost.MostMeasured} | {leads * (leads - 1) / 2 * positions} | {cost.Bits:0.00} | {cost.LeastWorst} | {cost.Put:0.00} | {cost.MostPut} | {leads * (leads - 1) / 2} |\n");
            Assert.InRange(cost.TakenForAnother, 0, 0.05);
        }

        Golden.Check("contacts.md", text.ToString());
        Assert.True(CommonTable.All.Length >= 12);
    }

    [Fact]
    public void Three_leads_and_two_positions_are_named_in_4_3_readings_on_average_and_6_at_worst()
    {
        var cost = ReadingsNeeded.Of(3, 2);
        Assert.InRange(cost.Average, 3, 4.3);
        Assert.InRange(cost.Worst, 4, 6);
    }

    [Fact]
    public void Four_leads_and_two_positions_are_named_in_6_4_readings_on_average() =>
        Assert.InRange(ReadingsNeeded.Of(4, 2).Average, 4, 6.4);

    [Fact]
    public void Of_three_positions_six_readings_cannot_tell_all_tables_but_clips_are_put_on_three_pairs_of_three_leads_and_six_of_four_at_most()
    {
        var (three, four) = (ReadingsNeeded.Of(3, 3), ReadingsNeeded.Of(4, 3));
        Assert.True(three.LeastWorst > 6 && three.Bits > 4.3 && four.Bits > 6.4);
        Assert.InRange(three.Put, 1, 3);
        Assert.InRange(three.MostPut, 2, 3);
        Assert.InRange(four.Put, 1, 6);
        Assert.InRange(four.MostPut, 3, 6);
    }

    [Fact]
    public void With_clips_the_switch_is_turned_through_all_positions_before_the_meter_moves()
    {
        var first = UnmarkedSwitch.Of(Three, Turns, [], isClipped: true).Next!;
        var second = UnmarkedSwitch.Of(Three, Turns, [new(first.Position, first.One, first.Other, Heard.Nothing)], isClipped: true).Next!;
        Assert.False(first.Stays);
        Assert.True(second.Stays);
        Assert.Equal((first.One, first.Other), (second.One, second.Other));
        Assert.NotEqual(first.Position, second.Position);
    }

    [Fact]
    public void A_lock_in_no_list_comes_out_as_measured()
    {
        ImmutableArray<Joined> odd = [new("aba"), new("abb"), new("abc")];
        var (read, _) = Answered(Three, Turns, odd);
        Assert.Equal(Known.Measured, read.State);
        Assert.Equal(odd, read.Table!.Value);
        Assert.Equal(1, read.Another, 12);
    }

    [Fact]
    public void A_hundred_ohms_inside_is_told_and_neither_open_nor_joined()
    {
        var read = UnmarkedSwitch.Of(Three, Turns, [new(1, 0, 1, Heard.Ohms, 100)]);
        Assert.Equal(new Reading(1, 0, 1, Heard.Ohms, 100), Assert.Single(read.Inside));
        Assert.False(read.Measured(1, 0, 1));
    }

    [Fact]
    public void A_worn_contact_of_two_ohms_still_joins()
    {
        var read = UnmarkedSwitch.Of(Three, Turns, [new(1, 0, 1, Heard.Ohms, 2)]);
        Assert.True(read.Measured(1, 0, 1));
        Assert.Empty(read.Inside);
    }

    [Fact]
    public void What_two_beeps_join_the_third_pair_need_not_be_read_for()
    {
        var read = UnmarkedSwitch.Of(Three, Turns, [new(2, 0, 1, Heard.Beep), new(2, 1, 2, Heard.Beep)]);
        Assert.True(read.Measured(2, 0, 2));
    }

    [Fact]
    public void Two_beeps_and_a_silence_around_three_leads_ask_again_before_anything_else()
    {
        ImmutableArray<Reading> readings = [new(2, 0, 1, Heard.Beep), new(2, 1, 2, Heard.Beep), new(2, 0, 2, Heard.Nothing)];
        var read = UnmarkedSwitch.Of(Three, Turns, readings);
        Assert.Equal(3, read.Misfit.Length);
        Assert.True(read.Next!.Again);
        var cured = UnmarkedSwitch.Of(Three, Turns, [.. readings, new(2, 0, 2, Heard.Beep)]);
        Assert.Empty(cured.Misfit);
        Assert.False(cured.Next!.Again);
    }

    [Fact]
    public void Readings_that_stay_against_each_other_when_repeated_fit_nothing_and_give_no_table()
    {
        ImmutableArray<Reading> readings = [new(2, 0, 1, Heard.Beep), new(2, 1, 2, Heard.Beep), new(2, 0, 2, Heard.Nothing)];
        var read = UnmarkedSwitch.Of(Three, Turns, [.. readings, .. readings]);
        Assert.Equal(Known.DoesNotFit, read.State);
        Assert.Null(read.Next);
        Assert.Null(read.Table);
    }

    [Fact]
    public void Every_choice_of_feed_and_ground_that_shorts_is_named_with_its_position()
    {
        var (read, _) = Answered(Three, Turns, [new("abc"), new("aab"), new("aaa")]);
        Assert.Equal(
            [
                "Plus on red and ground on brown, or the other way round: a dead short in on and lights.",
                "Plus on red and ground on black, or the other way round: a dead short in lights.",
                "Plus on brown and ground on black, or the other way round: a dead short in lights.",
            ],
            FeedAndGround.Of(read).Select(c => c.Words));
    }

    [Fact]
    public void What_is_likely_but_was_not_read_is_never_told_as_measured()
    {
        var (_, named) = Answered(Three, Turns, [new("abc"), new("aab"), new("aaa")]);
        Assert.Equal(Known.Likely, named.State);
        Assert.Contains(FeedAndGround.Of(named), c => c.Unread.Length > 0);
    }

    [Fact]
    public void The_same_readings_give_the_same_next_pair() =>
        Assert.Equal(
            UnmarkedSwitch.Of(Three, Turns, [new(0, 0, 1, Heard.Nothing)]).Next,
            UnmarkedSwitch.Of(Three, Turns, [new(0, 0, 1, Heard.Nothing)]).Next);

    [Fact]
    public void Eight_leads_and_eight_positions_are_asked_about_too()
    {
        ImmutableArray<string> names = ["1", "2", "3", "4", "5", "6", "7", "8"];
        Assert.NotNull(UnmarkedSwitch.Of(names, names, [new(0, 0, 7, Heard.Beep)]).Next);
    }

    // Read to the end with a meter that does not err; and as it stood when it was first named.
    private static (UnmarkedSwitch Read, UnmarkedSwitch Named) Answered(ImmutableArray<string> leads, ImmutableArray<string> positions, ImmutableArray<Joined> table)
    {
        var readings = ImmutableArray<Reading>.Empty;
        UnmarkedSwitch? named = null;
        while (true)
        {
            var read = UnmarkedSwitch.Of(leads, positions, readings);
            named ??= read.Table is null ? null : read;
            if (read.Next is not { } next)
            {
                return (read, named!);
            }

            readings = readings.Add(new(next.Position, next.One, next.Other, table[next.Position].Joins(next.One, next.Other) ? Heard.Beep : Heard.Nothing));
        }
    }
}
