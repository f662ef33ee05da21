using Loomwright.Live;
using Loomwright.Records;
using Loomwright.Sessions;

namespace Loomwright.Tests.Verbs;

public sealed class RecordTests(RecordTests.Kept kept) : IClassFixture<RecordTests.Kept>
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 4, 12, 0, 0, TimeSpan.FromHours(2));

    /// <summary>A folder with a session along each plan and a search.</summary>
    public sealed class Kept : IDisposable
    {
        private readonly Folder _folder = new();
        private int _given;

        public Kept()
        {
            File = _folder.Write("bikes/b.loom.yaml", Repository.Read(Called.Bench));
            using var live = new LiveFolder(_folder.Path);
            using var guide = new Guide(live);
            var session = guide.Begin("bikes/b.loom.yaml", "Ann", "red meter", null, Noon)!;
            Give(guide, session, EntryKind.Reading, "s0.measure.2", "0,4", "box B- to the clip for battery -");
            Give(guide, session, EntryKind.Seen, "s0.measure.2", "as expected");
            Give(guide, session, EntryKind.Seen, "s2.operate.1", "not");
            Give(guide, session, EntryKind.Reading, "s2.operate.1", "dark", "rear cluster.stop");
            Give(guide, session, EntryKind.Hot, "s3.operate.1", "");
            var bike = guide.Begin("bikes/b.loom.yaml", "", "", null, Noon.AddDays(1), BenchSession.OnTheBike)!;
            Give(guide, bike, EntryKind.Seen, "s0.measure.1", "not sure");
            guide.BeginSearch("bikes/b.loom.yaml", session.Design, Repository.Read(Called.Bench), Noon.AddDays(2)).KeepMended("mended", "renew tail ground and both its ends", Noon.AddDays(2));
            Plans = [TestRecord.Named(session), TestRecord.Named(bike)];
        }

        public string File { get; }

        public string[] Plans { get; }

        public void Dispose() => _folder.Dispose();

        private void Give(Guide guide, BenchSession session, EntryKind kind, string step, string raw, string? what = null) =>
            Assert.IsType<HandedOver.Kept>(guide.Keep(session, [new Given(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"a{++_given}"), step, kind, what, raw, null, Noon.AddMinutes(_given))]));
    }

    [Fact]
    public void The_record_tells_both_plans_what_was_checked_with_outcome_person_and_meter_and_what_was_not()
    {
        var lines = Called.With("record", kept.File).Golden.Split('\n');
        Assert.Equal("--- exit 1", lines[^2]);
        var told = string.Join('\n', lines.Where(l => !l.StartsWith("· s", StringComparison.Ordinal) && !l.StartsWith("    ", StringComparison.Ordinal)));
        // Whatever a step comes to say, each plan is named by its own.
        Assert.All(kept.Plans, p => Assert.Contains(p, told, StringComparison.Ordinal));
        Golden.Check("record/both.txt", told.Replace(kept.Plans[0], "OF-BENCH", StringComparison.Ordinal).Replace(kept.Plans[1], "OF--BIKE", StringComparison.Ordinal));
    }

    [Fact]
    public void For_a_machine_it_tells_the_same_with_numbers_and_bands()
    {
        var answer = Answered.Read(Called.With("record", kept.File, "--json"));
        var sessions = answer.GetProperty("sessions");
        Assert.Equal(["bench", "bike"], sessions.EnumerateArray().Select(s => s.GetProperty("plan").GetString()));
        var read = sessions[0].GetProperty("checked").EnumerateArray().First();
        Assert.Equal(("s0.measure.2", 0.4, "Ohm", "as_expected"), (read.GetProperty("step").GetString(), read.GetProperty("value").GetDouble(), read.GetProperty("unit").GetString(), read.GetProperty("verdict").GetString()));
        Assert.InRange(read.GetProperty("most").GetDouble(), 0.5, 0.51);
        Assert.Equal("hot", sessions[0].GetProperty("happened")[0].GetProperty("kind").GetString());
        Assert.False(sessions[0].GetProperty("file_changed_since").GetBoolean());
        Assert.Equal("power off", read.GetProperty("with").GetString());
        Assert.Equal("mended: renew tail ground and both its ends", Assert.Single(answer.GetProperty("searches").EnumerateArray()).GetProperty("told")[0].GetProperty("says").GetString());
    }

    [Fact]
    public void Without_a_session_it_says_that_nothing_was_checked()
    {
        using var other = new Folder();
        Assert.Equal("Nothing was checked yet.\n--- exit 0\n", Called.With("record", other.Write("b.loom.yaml", Repository.Read(Called.Bench))).Golden);
    }
}
