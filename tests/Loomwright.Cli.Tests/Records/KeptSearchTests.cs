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
        Evidence[] answers =
        [
            bike.Saw($"{stop}: rear cluster stop=dark, box.X4=on, main fuse=whole").Report!.In(table),
            bike.Read($"{stop}: box.X4 to battery.- = 12.4 V").Report!.In(table),
            bike.Found("terminals of box: as it should be").Report!.In(table),
            bike.NotSure(stop).Report!.In(table),
        ];
        string id;
        List<string> causes;
        using (var live = new LiveFolder(folder.Path))
        using (var guide = new Guide(live))
        {
            var kept = guide.BeginSearch("b.loom.yaml", "hash", text, Now);
            id = kept.Id;
            var search = Trouble.Begin(table);
            foreach (var answer in answers)
            {
                Assert.Null(kept.Keep(table, answer, Now));
                search = search.After(answer);
            }

            causes = [.. search.Suspects.Select(s => FormattableString.Invariant($"{s.Repair} {s.Share}"))];
            Assert.Null(guide.Newest("b.loom.yaml"));
        }

        using var opened = new LiveFolder(folder.Path);
        using var later = new Guide(opened);
        var again = later.FindSearch(id)!;
        Assert.Equal(answers.Length, again.Answers);
        Assert.Equal(causes, again.Played(Trouble.Begin(table))[^1].Suspects.Select(s => FormattableString.Invariant($"{s.Repair} {s.Share}")));
        Assert.Null(again.TakeBack(Now));
        Assert.Equal(answers.Length - 1, again.Answers);
    }
}
