using Loomwright.Records;
using Loomwright.Sessions;

namespace Loomwright.Tests.Records;

public sealed class GuideTests(OneGuide one) : IClassFixture<OneGuide>
{
    private readonly BenchSession _session = one.Begin(" Ann ");

    [Theory]
    [InlineData("0,4", 0.4, Verdict.AsExpected)]
    [InlineData("0.5 Ω", 0.5, Verdict.AsExpected)]
    [InlineData("0.51", 0.51, Verdict.Not)]
    [InlineData("OL", null, Verdict.Not)]
    [InlineData("1.000,5", null, Verdict.Unreadable)]
    [InlineData("<b>", null, Verdict.Unreadable)]
    public void A_reading_is_kept_as_typed_with_its_number_its_band_and_how_it_stands_to_it(string raw, double? ohms, Verdict verdict)
    {
        var entry = Kept(EntryKind.Reading, "s0.measure.2", "box B- to the clip for battery -", raw);
        Assert.Equal((raw, ohms, verdict), (entry.Raw, entry.Value, entry.Verdict));
        Assert.Equal(("Ohm", 0.0), (entry.Unit, entry.Least!.Value));
        Assert.InRange(entry.Most!.Value, 0.5, 0.51);
        Assert.Equal("box.B-", entry.About);
    }

    [Fact]
    public void No_reading_is_as_expected_where_only_a_least_is_known() =>
        Assert.Equal(Verdict.AsExpected, Kept(EntryKind.Reading, "s0.measure.1", "the clip for battery + to the clip for battery -", "ol").Verdict);

    [Theory]
    [InlineData("2", Verdict.Not)]
    [InlineData("-2.5", Verdict.Not)]
    [InlineData("-2,5 A", Verdict.Not)]
    [InlineData("-2 mA", Verdict.AsExpected)]
    public void A_drain_or_a_short_read_with_the_leads_swapped_is_one_all_the_same(string raw, Verdict verdict)
    {
        var onTheBike = one.Guide.Begin(OneGuide.Name, "", "", null, OneGuide.Noon, BenchSession.OnTheBike)!;
        one.Guide.Keep(onTheBike, [Given(_session.Id, EntryKind.Reading, "s5.operate.1") with { What = "key-off current", Raw = raw }]);
        Assert.Equal(("Amp", verdict), (one.Guide.Records.Entries(onTheBike.Id)[0].Unit, one.Guide.Records.Entries(onTheBike.Id)[0].Verdict));
    }

    [Fact]
    public void No_plan_takes_amps_or_ohms_below_nothing_for_any_number_of_them()
    {
        var bike = Bike.Read(new Text.SourceText(OneGuide.Name, File.ReadAllText(one.File)));
        var bands = new[] { bike.Plan(), bike.PlanOnTheBike() }.SelectMany(p => p.Stages).SelectMany(s => s.Steps).SelectMany(s => s.Expect).Select(e => e.Band).OfType<Bench.Band>().ToList();
        Assert.NotEmpty(bands);
        Assert.All(bands, b => Assert.NotNull(b.Least));
    }

    [Theory]
    [InlineData("as expected", Verdict.AsExpected)]
    [InlineData("not", Verdict.Not)]
    [InlineData("not sure", Verdict.NotSure)]
    [InlineData("something else", Verdict.None)]
    public void The_three_answers_are_what_they_say(string raw, Verdict verdict) =>
        Assert.Equal(verdict, Kept(EntryKind.Seen, "s0.power-up.4", "", raw).Verdict);

    [Fact]
    public void An_answer_to_a_step_this_program_does_not_know_is_not_lost()
    {
        var entry = Kept(EntryKind.Reading, "s99.measure.1", "volts", "12.4");
        Assert.Equal(("12.4", null, Verdict.None), (entry.Raw, entry.Value, entry.Verdict));
    }

    [Fact]
    public void What_is_no_answer_is_named_and_holds_up_no_other()
    {
        var tooLong = new string('x', 65);
        var kept = Assert.IsType<HandedOver.Kept>(one.Guide.Keep(_session, [Given(tooLong, EntryKind.Done, "s0.fetch.1"), Given(_session.Id, EntryKind.Done, "s0.fetch.1")]));
        Assert.Equal([tooLong], kept.NotAnswers);
        Assert.Equal(_session.Id, Assert.Single(one.Guide.Records.Entries(_session.Id)).Id);
    }

    [Fact]
    public void More_answers_than_are_taken_at_once_are_refused_whole()
    {
        var refused = Assert.IsType<HandedOver.Refused>(one.Guide.Keep(_session, [.. Enumerable.Range(0, Guide.MostAtOnce + 1).Select(i => Given(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{_session.Id}{i}"), EntryKind.Done, "s0.fetch.1"))]));
        Assert.Contains("more than 500 answers at once", refused.Why, StringComparison.Ordinal);
        Assert.Empty(one.Guide.Records.Entries(_session.Id));
    }

    [Fact]
    public void A_repair_too_long_for_the_record_is_not_taken_for_kept()
    {
        Assert.Contains("longer than the record takes", one.Guide.KeepOne(_session.Id, Given(_session.Id, EntryKind.Changed, "s0.measure.2") with { Raw = new string('x', 401) }), StringComparison.Ordinal);
        Assert.Empty(one.Guide.Records.Entries(_session.Id));
        Assert.Null(one.Guide.KeepOne(_session.Id, Given(_session.Id, EntryKind.Changed, "s0.measure.2") with { Raw = new string('x', 400) }));
        Assert.Contains("not in the record any more", one.Guide.KeepOne("no such", Given($"{_session.Id}b", EntryKind.Changed, "s0.measure.2")), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_measured_between_the_longest_names_is_an_answer()
    {
        var between = $"{new string('a', 80)} X1 ({new string('b', 80)}) to {new string('c', 80)} X1 ({new string('d', 80)})";
        Assert.Equal(between, Kept(EntryKind.Reading, "s0.measure.2", between, "0.4").What);
    }

    [Fact]
    public void A_session_goes_on_along_the_plan_it_began_with_when_the_file_changes()
    {
        using var begun = new OneGuide();
        var session = begun.Begin(" Ann ");
        var before = begun.Guide.Plan(session).Title;
        File.WriteAllText(begun.File, File.ReadAllText(begun.File).Replace("name: Kittiwake", "name: Heron", StringComparison.Ordinal));
        using var later = new Guide(begun.Live);
        Assert.Equal(before, later.Plan(later.Newest(OneGuide.Name)[0]).Title);
        Assert.Equal("Ann", later.Newest(OneGuide.Name)[0].Who);
    }

    [Fact]
    public void A_session_keeps_every_step_it_began_with_those_the_proof_added_too()
    {
        var whole = Bike.Read(new Text.SourceText(OneGuide.Name, File.ReadAllText(one.File))).Proof().Plan;
        using var later = new Guide(one.Live);
        Assert.Equal(Bench.PlanText.Of(whole), Bench.PlanText.Of(later.Plan(later.Newest(OneGuide.Name)[0])));
        Assert.Contains(whole.Stages[0].Steps, s => s.Id == "s0.measure.more-1");
    }

    private Entry Kept(EntryKind kind, string step, string what, string raw)
    {
        Assert.IsType<HandedOver.Kept>(one.Guide.Keep(_session, [Given(_session.Id, kind, step) with { What = what, Raw = raw }]));
        return Assert.Single(one.Guide.Records.Entries(_session.Id));
    }

    private static Given Given(string id, EntryKind kind, string step) => new(id, step, kind, null, null, null, OneGuide.Noon);
}
