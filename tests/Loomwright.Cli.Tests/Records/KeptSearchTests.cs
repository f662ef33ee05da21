using Loomwright.Diagnosis;
using Loomwright.Live;
using Loomwright.Sessions;
using Loomwright.Text;

namespace Loomwright.Tests.Records;

/// <summary>The answers of a search for a cause, kept beside the sessions.</summary>
public sealed class KeptSearchTests
{
    private static readonly DateTimeOffset Now = new(2026, 5, 2, 10, 0, 0, TimeSpan.FromHours(2));

    [Fact]
    public void Every_kind_of_answer_is_read_back_as_it_was_given_and_no_session_is_made_of_it()
    {
        using var folder = new Folder();
        var text = File.ReadAllText(Called.Bench);
        folder.Write("b.loom.yaml", text);
        var bike = Bike.Read(new SourceText("b", text));
        var table = bike.Trouble(stop: TestContext.Current.CancellationToken);
        const string stop = "lock=riding, front brake=pressed";
        var unsure = table.Place(bike.NotSure(stop).Report!.Done!)!.Value;
        Evidence[] answers =
        [
            bike.Saw($"{stop}: rear cluster stop=dark, box.X4=on, main fuse=whole").Report!.In(table),
            bike.Read($"{stop}: box.X4 to battery.- = 12.4 V").Report!.In(table),
            bike.Found("terminals of box: as it should be").Report!.In(table),
            bike.Found("terminals of rear cluster: stop lamp feed sits on rear cluster.plate").Report!.In(table),
            bike.NotSure("lock=riding, left button=pressed").Report!.In(table),
            new Evidence.NotSure(new Asked(unsure, 0, 1)),
            new Evidence.NotSure(new Asked(null, Check: table.Singles.SelectMany(h => h.Traces).First().Check)),
        ];
        string id;
        var after = new List<string>();
        using (var live = new LiveFolder(folder.Path))
        using (var guide = new Guide(live))
        {
            var kept = guide.BeginSearch("b.loom.yaml", "hash", text, Now);
            id = kept.Id;
            var search = Trouble.Begin(table);
            foreach (var answer in answers)
            {
                Assert.Null(kept.Keep(KeptSearch.NewId(Now), table, answer, Now));
                after.Add(Told(search = search.After(answer)));
            }

            Assert.Null(kept.KeepHot(KeptSearch.NewId(Now), search.Table, unsure, Now));
            after.Add(Told(search = Trouble.Begin(search.Table.Hot(unsure), search.Answers)));
            var mended = search.Suspects.First(s => !s.Hypotheses[0].Faults.IsEmpty);
            Assert.Null(kept.KeepMended(KeptSearch.NewId(Now), mended.Repair, Now));
            after.Add(Told(search.Mended(mended)));
            Assert.Empty(guide.Newest("b.loom.yaml"));
        }

        using var opened = new LiveFolder(folder.Path);
        using var later = new Guide(opened);
        var again = later.FindSearch(id)!;
        Assert.Equal(after.Count, again.Answers);
        Assert.Equal(after, again.Played(Trouble.Begin(table), Now).Select(p => Told(p.After)));
        Assert.Equal(after.Count, after.Distinct().Count());

        var record = Assert.Single(later.SearchRecords("b.loom.yaml"));
        Assert.Equal((null, after.Count), (record.Step, record.Answers.Length));
        var read = Assert.Single(record.Answers, a => a.Value is not null);
        Assert.Equal((12.4, "Volt", Loomwright.Records.Verdict.AsExpected), (read.Value, read.Unit, read.Verdict));
        Assert.InRange(12.4, read.Least!.Value, read.Most!.Value);
        Assert.Equal(FormattableString.Invariant($"lock → riding, front brake → pressed: 12.4 V from box.X4 to battery minus, inside {read.Least:0.00} V to {read.Most:0.00} V"), SearchRecord.Says(read));
        Assert.Equal("terminals of box: as it should be", SearchRecord.Says(record.Answers[2]));

        // Kept before the words were: they are made of what was.
        Assert.Equal("lock → riding, front brake → pressed: 12.4 V from box.X4 to battery minus", SearchRecord.Says(read with { What = "", Least = null, Most = null }));
        Assert.StartsWith("lock → riding, front brake → pressed: rear cluster.stop dark", SearchRecord.Says(record.Answers[0] with { What = "" }), StringComparison.Ordinal);
        Assert.Equal(["hot, smoke or smell", "mended"], [SearchRecord.Says(record.Answers[^2]).Split(": ")[1], SearchRecord.Says(record.Answers[^1]).Split(": ")[0]]);
    }

    [Fact]
    public void A_search_left_alone_for_a_quarter_of_an_hour_does_not_take_the_bike_to_stand_as_it_was_left()
    {
        using var folder = new Folder();
        folder.Write("b.loom.yaml", "");
        using var live = new LiveFolder(folder.Path);
        using var guide = new Guide(live);
        var bike = Bike.Read(new SourceText("b", File.ReadAllText(Called.Bench)));
        var table = bike.Trouble(stop: TestContext.Current.CancellationToken);
        var kept = guide.BeginSearch("b.loom.yaml", "hash", "", Now);

        const string stop = "lock=riding, front brake=pressed";

        // A short may be behind it: where the bike stands so already the rest may be looked at, and it is not brought again.
        Assert.Null(kept.Keep("one", table, bike.Saw($"{stop}: rear cluster stop=dark").Report!.In(table), Now));
        bool IsAskedOf(double minutes) => kept.Played(Trouble.Begin(table), Now.AddMinutes(minutes))[^1].After.Questions.Any(q => q.Stimulus == table.Place(bike.NotSure(stop).Report!.Done!));
        Assert.True(IsAskedOf(9));
        Assert.False(IsAskedOf(15));
    }

    [Fact]
    public void An_answer_is_taken_back_by_who_gave_it_whatever_another_gave_after_it()
    {
        using var folder = new Folder();
        folder.Write("b.loom.yaml", "");
        using var live = new LiveFolder(folder.Path);
        using var guide = new Guide(live);
        var mine = guide.BeginSearch("b.loom.yaml", "hash", "", Now);
        var other = guide.FindSearch(mine.Id)!;
        Assert.Null(mine.KeepMended("mine", "one", Now));
        Assert.Null(other.KeepMended("other", "another", Now));
        Assert.Null(mine.TakeBack("mine", Now));
        Assert.Equal("other", Assert.Single(TestRecord.NotUndone(guide.Records.Entries(mine.Id))).Id);
    }

    private static string Told(Trouble search) => string.Join('\n', search.Suspects.Select(s => FormattableString.Invariant($"{s.Repair} {s.Share}")).Prepend(FormattableString.Invariant($"{search.Answers.Length} {search.Table.HotAt}")));
}
