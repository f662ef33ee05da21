using Loomwright.Live;
using Loomwright.Records;
using Loomwright.Sessions;
using Microsoft.Data.Sqlite;

namespace Loomwright.Tests.Records;

public sealed class RecordFileTests : IDisposable
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 4, 12, 0, 0, TimeSpan.FromHours(2));

    private readonly Folder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void What_was_measured_is_there_with_bike_design_step_meter_person_and_local_time_after_the_program_ended()
    {
        using (var records = RecordFile.Open(_folder.Path))
        {
            records.Begin(Session, "name: b\n");
            records.Keep(Session, [Reading("e1")]);
        }

        using var again = RecordFile.Open(_folder.Path);
        Assert.Equal(Session, Assert.Single(again.Sessions("b.loom.yaml")));
        Assert.Equal(Reading("e1") with { Number = 1 }, Assert.Single(again.Entries("s")));
        Assert.Equal("name: b\n", again.Text("d"));
        using var raw = new SqliteConnection($"Data Source={Stored};Pooling=False");
        raw.Open();
        using var ask = raw.CreateCommand();
        ask.CommandText = "SELECT bike || '|' || design || '|' || about || '|' || step || '|' || fault || '|' || meter || '|' || who || '|' || at FROM entries";
        Assert.Equal("b.loom.yaml|d|stop lamp feed|s1.measure.1|open: stop lamp feed|red meter|Ann|2026-05-04T12:00:00.000+02:00", ask.ExecuteScalar());
    }

    [Fact]
    public void Handing_the_same_answer_over_twice_keeps_it_once()
    {
        using var records = RecordFile.Open(_folder.Path);
        records.Begin(Session, "");
        records.Keep(Session, [Reading("e1"), Reading("e2")]);
        records.Keep(Session, [Reading("e2"), Reading("e3")]);
        Assert.Equal(["e1", "e2", "e3"], records.Entries("s").Select(e => e.Id));
        Assert.Equal(["e3"], records.Entries("s", after: 2).Select(e => e.Id));
    }

    [Fact]
    public void Answers_of_one_call_are_kept_all_or_none()
    {
        using var records = RecordFile.Open(_folder.Path);
        records.Begin(Session, "");
        Assert.Throws<RecordsException>(() => records.Keep(Session, [Reading("e1"), Reading("e2") with { Session = "x" }, Reading("e3") with { Step = null! }]));
        Assert.Empty(records.Entries("s"));
    }

    [Fact]
    public void A_damaged_file_is_said_with_the_cure_when_it_is_read()
    {
        using var records = RecordFile.Open(_folder.Path);
        Raw("DROP TABLE entries");
        Assert.Contains("could not be read", Assert.Throws<RecordsException>(() => records.Entries("s")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_of_a_newer_program_is_left_alone_and_said()
    {
        RecordFile.Open(_folder.Path).Dispose();
        Raw("PRAGMA user_version = 1000");
        Assert.Contains("newer", Assert.Throws<RecordsException>(() => RecordFile.Open(_folder.Path)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_no_record_is_said_and_left_as_it_is()
    {
        var path = _folder.Write(RecordFile.FileName, new string('x', 5000));
        Assert.Contains("cannot be used", Assert.Throws<RecordsException>(() => RecordFile.Open(_folder.Path)).Message, StringComparison.Ordinal);
        Assert.Equal(5000, new FileInfo(path).Length);
    }

    [Fact]
    public void Rows_go_to_a_log_first_so_that_a_stop_in_between_leaves_the_file_whole()
    {
        using var records = RecordFile.Open(_folder.Path);
        records.Begin(Session, "");
        using var raw = new SqliteConnection($"Data Source={Stored};Pooling=False");
        raw.Open();
        using var ask = raw.CreateCommand();
        ask.CommandText = "PRAGMA journal_mode";
        Assert.Equal("wal", ask.ExecuteScalar());
    }

    [Fact]
    public void Looking_makes_no_file_and_a_second_program_keeps_nothing()
    {
        _folder.Write("b.loom.yaml", Repository.Read(Called.Bench));
        using var first = new LiveFolder(_folder.Path);
        using var second = new LiveFolder(_folder.Path);
        using var guide = new Guide(second);
        Assert.Empty(guide.Newest("b.loom.yaml"));
        Assert.Contains("another running Loomwright", Assert.Throws<RecordsException>(() => guide.Begin("b.loom.yaml", "", "", null, Noon)).Message, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(_folder.Path, RecordFile.FileName)));
    }

    [Fact]
    public void Looking_into_the_records_writes_nothing_and_makes_no_file_beside_them()
    {
        using (var records = RecordFile.Open(_folder.Path))
        {
            records.Begin(Session, "");
            records.Keep(Session, [Reading("e1")]);
        }

        var before = File.ReadAllBytes(Stored);
        using (var look = RecordFile.OpenToRead(_folder.Path))
        {
            Assert.Equal("e1", Assert.Single(look.Entries("s")).Id);
            Assert.Throws<RecordsException>(() => look.Keep(Session, [Reading("e2")]));
        }

        Assert.Equal([Stored], Directory.GetFiles(_folder.Path));
        Assert.Equal(before, File.ReadAllBytes(Stored));
    }

    [Fact]
    public void Who_looks_while_another_program_keeps_sees_what_it_kept_last()
    {
        using var look = RecordFile.OpenToRead(_folder.Path);
        using var records = RecordFile.Open(_folder.Path);
        records.Begin(Session, "");
        Assert.Empty(look.Entries("s"));
        records.Keep(Session, [Reading("e1")]);
        Assert.Equal("e1", Assert.Single(look.Entries("s")).Id);
    }

    [Fact]
    public void Records_of_an_older_program_are_shown_as_they_are_and_stay_so_until_something_is_kept()
    {
        using (var records = RecordFile.Open(_folder.Path))
        {
            records.Begin(Session, "");
        }

        Raw("ALTER TABLE sessions DROP COLUMN steps; PRAGMA user_version = 1");
        var before = File.ReadAllBytes(Stored);
        using (var look = RecordFile.OpenToRead(_folder.Path))
        {
            Assert.Equal(Session, Assert.Single(look.Sessions("b.loom.yaml")));
        }

        Assert.Equal(before, File.ReadAllBytes(Stored));
        using var later = RecordFile.Open(_folder.Path);
        Assert.Equal(Session, Assert.Single(later.Sessions("b.loom.yaml")));
    }

    [Fact]
    public void Programs_that_bring_the_same_file_up_at_the_same_time_all_find_it_brought()
    {
        Raw("PRAGMA journal_mode = WAL");
        var programs = Enumerable.Range(0, 8).Select(_ => new SqliteConnection($"Data Source={Stored};Pooling=False")).ToList();
        try
        {
            programs.ForEach(p => p.Open());
            Parallel.ForEach(programs, new() { MaxDegreeOfParallelism = programs.Count, CancellationToken = TestContext.Current.CancellationToken }, Migrations.Bring);
            Assert.All(programs, p => Assert.Equal(Migrations.Newest, Migrations.Form(p)));
        }
        finally
        {
            programs.ForEach(p => p.Dispose());
        }
    }

    [Theory]
    [InlineData(5, "Another program is writing it")]
    [InlineData(8, "rights of the folder")]
    [InlineData(13, "room on its disk")]
    [InlineData(26, "Move that file away")]
    public void Only_a_file_that_is_no_record_any_more_is_to_be_moved_away(int sqlite, string cure)
    {
        var told = RecordFile.Cure(new SqliteException("", sqlite));
        Assert.Contains(cure, told, StringComparison.Ordinal);
        Assert.Equal(sqlite == 26, told.Contains("away", StringComparison.Ordinal));
    }

    [Fact]
    public void A_session_is_begun_by_who_may_write_where_the_records_lie_whoever_has_the_folder_of_the_design()
    {
        _folder.Write("sub/b.loom.yaml", Repository.Read(Called.Bench));
        using var other = new LiveFolder(Path.Combine(_folder.Path, "sub"));
        using var first = new LiveFolder(_folder.Path);
        using var second = new LiveFolder(_folder.Path);
        using var refused = new Guide(second);
        Assert.Contains("another running Loomwright", Assert.Throws<RecordsException>(() => refused.Begin("sub/b.loom.yaml", "", "", null, Noon, BenchSession.OnTheBike)).Message, StringComparison.Ordinal);
        using var guide = new Guide(first);
        Assert.NotNull(guide.Begin("sub/b.loom.yaml", "", "", null, Noon, BenchSession.OnTheBike));
        Assert.Equal(BenchSession.OnTheBike, refused.Newest("sub/b.loom.yaml")[0].Plan);
    }

    private string Stored => Path.Combine(_folder.Path, RecordFile.FileName);

    private void Raw(string change)
    {
        using var raw = new SqliteConnection($"Data Source={Stored};Pooling=False");
        raw.Open();
        using var make = raw.CreateCommand();
        make.CommandText = change;
        make.ExecuteNonQuery();
    }

    private static BenchSession Session => new("s", "b.loom.yaml", "d", "bench", "open: stop lamp feed", "Ann", "red meter", Noon);

    private static Entry Reading(string id) =>
        new(id, "s", "s1.measure.1", EntryKind.Reading, "stop lamp feed", "volts", "12,4", 12.4, "Volt", 12, 13, Verdict.AsExpected, null, Noon);
}
