using Loomwright.Records;
using Loomwright.Sessions;

namespace Loomwright.Tests.Records;

public sealed class TestRecordTests(OneGuide one) : IClassFixture<OneGuide>
{
    private readonly BenchSession _session = one.Begin();
    private int _given;

    private TestRecord Record => one.Guide.Record(OneGuide.Name, _session.Id)[0];

    [Fact]
    public void What_was_not_answered_stands_as_not_checked_and_nothing_is_in_both()
    {
        var all = Record.NotChecked.Length;
        Give(EntryKind.Reading, "s0.measure.2", "0,4", "box B- to the clip for battery -");
        Assert.Equal(all, Record.NotChecked.Length);
        Assert.Equal("0,4, inside", Assert.Single(Record.ReadAlone).Words);
        Give(EntryKind.Seen, "s0.measure.2", "as expected");

        var line = Assert.Single(Record.Lines);
        Assert.Equal(("0,4, inside", "Ann", "red meter"), (line.Words, Record.Session.Who, Record.Session.Meter));
        Assert.Equal(all - 1, Record.NotChecked.Length);
        Assert.Empty(Record.ReadAlone);
        Assert.DoesNotContain(Record.NotChecked, s => s.Id == "s0.measure.2");
    }

    [Fact]
    public void An_answer_taken_back_does_not_count()
    {
        var id = Give(EntryKind.Seen, "s0.power-up.4", "as expected");
        Give(EntryKind.Undo, "s0.power-up.4", "", of: id);
        Assert.Empty(Record.Lines);
    }

    [Fact]
    public void What_was_not_as_expected_stays_in_the_record_beside_what_was_given_in_its_place_taken_back_or_not()
    {
        Give(EntryKind.Reading, "s0.measure.2", "3", "box B- to the clip for battery -");
        var no = Give(EntryKind.Seen, "s0.measure.2", "not");
        Give(EntryKind.Reading, "s0.measure.2", "0.4", "box B- to the clip for battery -");
        Give(EntryKind.Undo, "s0.measure.2", "", of: no);
        Give(EntryKind.Seen, "s0.measure.2", "as expected");
        Assert.Equal("0.4, inside (before that: 3, outside; not)", Assert.Single(Record.Lines).Words);
    }

    [Theory]
    [InlineData("1.2k", 1200.0)]
    [InlineData("400m", 0.4)]
    [InlineData("2 M", 2e6)]
    [InlineData("1.2", 1.2)]
    [InlineData("1.2x", null)]
    public void The_letter_a_meter_shows_before_the_unit_will_do_for_it(string typed, double? ohms)
    {
        Give(EntryKind.Reading, "s0.measure.2", typed, "box B- to the clip for battery -");
        Give(EntryKind.Seen, "s0.measure.2", "not sure");
        Assert.Equal(ohms, Assert.Single(Record.Lines).Answer.Value);
    }

    [Theory]
    [InlineData(EntryKind.Changed)]
    [InlineData(EntryKind.Hot)]
    public void After_a_change_at_the_loom_or_something_hot_the_checks_of_its_stage_count_from_there_on(EntryKind happened)
    {
        Give(EntryKind.Seen, "s0.power-up.4", "not");
        Give(EntryKind.Seen, "s1.power-up.2", "as expected");
        Give(happened, "s0.power-up.4", "");
        Assert.NotEmpty(Record.Lines);
        Assert.All(Record.Lines, l => Assert.Equal(1, l.Stage.Number));
        Assert.Equal(happened, Assert.Single(Record.Happened).Kind);
        Assert.All(Record.Void, l => Assert.Equal(("s0.power-up.4", happened), (l.Step.Id, l.VoidSince!.Kind)));
        Assert.NotEmpty(Record.Void);
        Give(EntryKind.Seen, "s0.power-up.4", "as expected");
        Assert.Equal(["as expected", "not read; the step: as expected"], Record.Lines.Where(l => l.Step.Id == "s0.power-up.4").Select(l => l.Words));
    }

    [Fact]
    public void What_was_read_before_something_got_hot_stays_in_the_record_void_and_what_got_hot_is_named()
    {
        Give(EntryKind.Reading, "s0.measure.2", "0,4", "box B- to the clip for battery -");
        Give(EntryKind.Hot, "s0.power-up.4", "key feed", "wire");

        Assert.Empty(Record.Lines);
        Assert.Equal("0,4, inside", Assert.Single(Record.Void).Words);
        Assert.Equal("hot, smoke or smell: the wire key feed", Record.Says(Record.Void[0].VoidSince!));
    }

    [Fact]
    public void A_lead_that_got_hot_in_place_of_a_part_is_called_so_in_the_record()
    {
        Give(EntryKind.Hot, "s0.power-up.4", "lock", "part");
        Assert.Equal("hot, smoke or smell: the lead in place of lock", Record.Says(Assert.Single(Record.Happened)));
    }

    [Theory]
    [InlineData("s0.measure.3", "power off, the lead in place of lock at riding")]
    [InlineData("s0.measure.4", "power off")]
    [InlineData("s0.measure.more-2", "power off, fuse out of key fuse")]
    [InlineData("s2.operate.2", "red on rear cluster stop, black on rear cluster ground, power on, the lead in place of lock at riding, the lead in place of front brake at pressed")]
    [InlineData("s3.measure.1", "power off, left rear indicator unplugged")]
    public void Each_line_says_how_everything_stood_when_it_was_read(string step, string stood)
    {
        Give(EntryKind.Seen, step, "as expected");
        Assert.Equal(stood, Record.Lines[^1].With);
    }

    [Fact]
    public void What_was_told_to_be_otherwise_is_not_as_expected_and_the_rest_of_that_look_is()
    {
        Give(EntryKind.Seen, "s2.operate.1", "not");
        Give(EntryKind.Reading, "s2.operate.1", "dark", "rear cluster.stop");

        Assert.Equal(
            [("lights on box", Verdict.AsExpected), ("rear cluster.tail", Verdict.AsExpected), ("rear cluster.stop", Verdict.Not)],
            Record.Lines.Where(l => l.Expected.Band is null).Select(l => (l.Expected.What, l.Answer.Verdict)));
    }

    private string Give(EntryKind kind, string step, string raw, string what = "", string? of = null)
    {
        var id = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{_session.Id}{_given++}");
        Assert.IsType<HandedOver.Kept>(one.Guide.Keep(_session, [new Given(id, step, kind, what, raw, of, OneGuide.Noon)]));
        return id;
    }
}
