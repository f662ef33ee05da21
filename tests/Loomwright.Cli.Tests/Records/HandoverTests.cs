using Loomwright.Live;
using Loomwright.Records;
using Loomwright.Sessions;

namespace Loomwright.Tests.Records;

public sealed class HandoverTests(OneGuide one) : IClassFixture<OneGuide>
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 4, 12, 0, 0, TimeSpan.FromHours(2));

    private readonly Guide _guide = one.Guide;
    private readonly BenchSession _session = one.Begin();
    private int _given;

    [Fact]
    public void A_lamp_told_dark_with_its_light_on_begins_a_search_that_knows_what_was_fine_before_it()
    {
        BrakePressedAndStopLampDark();

        var handed = At("s2.operate.1");

        Assert.Equal(["2 checks of this stage were as expected.", "rear cluster stop: dark, expected lit."], handed.Told);
        Assert.True(handed.IsTold);
        Assert.Contains(handed.Search.Suspects.Take(3), s => s.Repair.Contains("stop lamp feed", StringComparison.Ordinal));
        Assert.All(handed.Search.Suspects, s => Assert.DoesNotContain("main fuse", s.Repair, StringComparison.Ordinal));
    }

    [Fact]
    public void A_way_back_that_reads_nothing_before_power_names_the_wire_of_that_way_first()
    {
        Give(EntryKind.Reading, "s2.measure.2", "0.2", "the wire for front brake 1 to the clip for battery -");
        Give(EntryKind.Seen, "s2.measure.2", "as expected");
        Give(EntryKind.Reading, "s2.measure.5", "OL", "rear cluster ground to the clip for battery -");
        Give(EntryKind.Seen, "s2.measure.5", "not");

        var handed = At("s2.measure.5");

        Assert.True(handed.IsTold);
        Assert.Equal("rear cluster ground to the clip for battery - read OL, expected at most 0.5 Ω.", handed.Told[^1]);
        Assert.Contains(handed.Search.Suspects.Take(3), s => s.Repair.Contains("tail ground", StringComparison.Ordinal));
        Assert.DoesNotContain("front brake", handed.Search.Suspects[0].Repair, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_not_as_expected_before_power_keeps_it_off_in_the_search_until_it_is_mended()
    {
        Give(EntryKind.Reading, "s2.measure.5", "OL", "rear cluster ground to the clip for battery -");
        Give(EntryKind.Seen, "s2.measure.5", "not");

        var search = At("s2.measure.5").Search;
        Assert.True(search.Table.IsPowerOff);
        for (var looks = 0; looks < 5; looks++)
        {
            Assert.NotEmpty(search.Questions);
            Assert.All(search.Questions, q => Assert.NotNull(q.Place.Check));
            search = search.After(new Diagnosis.Evidence.Checked(search.Questions[0].Place.Check!, null));
        }

        Give(EntryKind.Seen, "s0.power-up.1", "not");
        Assert.True(At("s0.power-up.1").Search.Table.IsPowerOff);
        Give(EntryKind.Changed, "s2.measure.5", "");
        BrakePressedAndStopLampDark();
        Assert.False(At("s2.operate.1").Search.Table.IsPowerOff);
    }

    [Fact]
    public void Volts_read_at_the_lamp_are_handed_over_as_read()
    {
        Give(EntryKind.Reading, "s2.operate.2", "9.1", "volts at rear cluster stop");
        Give(EntryKind.Seen, "s2.operate.2", "not");

        var measured = Assert.IsType<Diagnosis.Evidence.Measured>(Assert.Single(At("s2.operate.2").Search.Answers));

        Assert.Equal(9.1, measured.Volts);
    }

    [Fact]
    public void After_hot_smoke_or_smell_what_could_burn_there_is_thought_of_first_and_not_switched_on_again()
    {
        Give(EntryKind.Hot, "s2.power-up.3", "");

        var search = At("s2.power-up.3").Search;

        var first = search.Suspects[0].Hypotheses[0];
        Assert.True(search.Table.Harms(first, search.Table.Place(Sights.Of(Stage(2)).At("s2.power-up.3")!)!.Value), search.Suspects[0].Repair);
        Assert.All(search.Questions, q => Assert.False(q.Stimulus is { } done && search.Table.Harms(first, done)));
    }

    [Fact]
    public void What_got_hot_is_told_to_the_search_which_looks_there_first()
    {
        Give(EntryKind.Hot, "s2.power-up.3", "main fuse", "part");

        var handed = At("s2.power-up.3");

        Assert.Equal("What got hot: the part main fuse.", handed.Told[^1]);
        var before = new Loomwright.Proof.BeforePower(Stage(2));
        Assert.True(before.IsAt(handed.Search.Suspects[0].Hypotheses[0].Faults[0].Fault, "main fuse"), handed.Search.Suspects[0].Repair);
    }

    [Fact]
    public void What_was_read_before_the_heat_does_not_overrule_what_is_found_at_the_thing_that_got_hot()
    {
        foreach (var step in Stage(2).Steps.Where(s => s.Meter is { Dial: Bench.Dial.Ohms }))
        {
            foreach (var read in step.Expect.Where(e => e.IsRead))
            {
                Give(EntryKind.Reading, step.Id, read.Band!.Most is { } most ? (most / 2).ToString(System.Globalization.CultureInfo.InvariantCulture) : "OL", read.What);
            }

            Give(EntryKind.Seen, step.Id, "as expected");
        }

        Give(EntryKind.Hot, "s2.power-up.3", "main fuse", "part");

        var handed = At("s2.power-up.3");
        Assert.Equal("Something got hot; what was seen and read before it does not count.", handed.Told[0]);
        Assert.Empty(handed.Search.Answers);
        var check = Assert.IsType<Diagnosis.Question.Of>(handed.Search.Questions[0]).Check;
        Assert.Equal("main fuse", check.Subject);
        foreach (var found in handed.Search.Table.Findable(check))
        {
            var after = handed.Search.After(new Diagnosis.Evidence.Checked(check, found));
            Assert.Null(after.Odd);
            Assert.Contains(after.Suspects[0].Hypotheses[0].Traces, t => t.Check == check && t.Found == found);
            Assert.True(after.Suspects[0].Share > 0.4, after.Suspects[0].Repair);
        }
    }

    [Fact]
    public void A_lead_in_place_of_a_part_that_got_hot_is_called_as_the_session_calls_it()
    {
        Give(EntryKind.Hot, "s2.power-up.3", "lock", "part");

        Assert.Equal("What got hot: the lead in place of lock.", At("s2.power-up.3").Told[^1]);
    }

    [Fact]
    public void After_heat_and_a_change_nobody_names_the_search_remembers_the_heat_and_looks_at_things_without_power_first()
    {
        Give(EntryKind.Hot, "s2.power-up.3", "main fuse", "part");
        Give(EntryKind.Changed, "s2.power-up.3", "");

        var handed = At("s2.power-up.3");

        Assert.True(handed.IsTold);
        Assert.Equal("main fuse", Assert.IsType<Diagnosis.Question.Of>(handed.Search.Questions[0]).Check.Subject);
        Assert.StartsWith("main fuse got hot before", Diagnosis.TroubleText.HotBefore(handed.Search.Table), StringComparison.Ordinal);
    }

    [Fact]
    public void After_a_repair_that_did_not_help_what_was_seen_still_speaks_for_the_other_fault()
    {
        BrakePressedAndStopLampDark();
        var wrong = At("s2.operate.1").Search.Suspects[0];
        Give(EntryKind.Changed, "s2.operate.1", wrong.Repair);
        BrakePressedAndStopLampDark();

        var handed = At("s2.operate.1");

        Assert.Contains($"Mended: {wrong.Repair}.", handed.Told);
        Assert.All(handed.Search.Suspects, s => Assert.NotEqual(wrong.Repair, s.Repair));
    }

    [Fact]
    public void What_was_not_told_is_asked_first()
    {
        Give(EntryKind.Seen, "s2.operate.1", "not");
        Assert.False(At("s2.operate.1").IsTold);
    }

    private void BrakePressedAndStopLampDark()
    {
        Give(EntryKind.Seen, "s2.power-up.2", "as expected");
        Give(EntryKind.Seen, "s2.power-up.3", "as expected");
        Give(EntryKind.Reading, "s2.operate.1", "dark", "rear cluster.stop");
        Give(EntryKind.Seen, "s2.operate.1", "not");
    }

    private Handover At(string step) => _guide.HandOver(_session.Id, step)!;

    private Bench.Stage Stage(int number) => _guide.Plan(_session).Stages.First(s => s.Number == number);

    private void Give(EntryKind kind, string step, string raw, string? what = null) =>
        Assert.IsType<HandedOver.Kept>(_guide.Keep(_session, [new Given(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{_session.Id}.{++_given}"), step, kind, what, raw, null, Noon.AddMinutes(_given))]));
}
