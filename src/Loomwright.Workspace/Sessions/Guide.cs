using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Bench;
using Loomwright.Live;
using Loomwright.Records;
using Loomwright.Text;

namespace Loomwright.Sessions;

/// <summary>The guided sessions of one folder: begins them, keeps what is answered, knows the plan each one follows.</summary>
public sealed class Guide(LiveFolder folder) : IDisposable
{
    /// <summary>Most answers handed over at once.</summary>
    public const int MostAtOnce = 500;

    private const int MostPlans = 16;

    private const string Gone = "The session is not in the record any more.";

    // In the id of a search that began at a session's step.
    internal const char Separator = '/';

    private readonly Lock _gate = new();
    private readonly ConcurrentDictionary<string, Bike> _bikes = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<(string Design, string Plan, string? Steps), Plan> _plans = new();
    private RecordFile? _records;

    /// <summary>What is kept of this folder; to look into alone while this program may not write in it.</summary>
    /// <exception cref="RecordsException">It cannot be used.</exception>
    public RecordFile Records
    {
        get
        {
            lock (_gate)
            {
                return _records ?? (folder.ReadOnly is null ? _records = RecordFile.Open(folder.Path) : RecordFile.OpenToRead(folder.Path));
            }
        }
    }

    /// <summary>The newest session of a bike along each plan, the one begun last first.</summary>
    /// <exception cref="RecordsException">The records cannot be read.</exception>
    public ImmutableArray<BenchSession> Newest(string path) => HasRecords ? [.. Records.Sessions(path).DistinctBy(s => s.Plan)] : [];

    /// <summary>The session of that id, or null.</summary>
    public BenchSession? Find(string id) => HasRecords ? Records.Session(id) : null;

    /// <summary>
    /// Begins a session on the design as it now stands; null when there is no such design or it has no plan. Waits until every
    /// check the proof adds to the bench plan is worked out, and keeps the steps: whatever is worked out later, they stay the same.
    /// </summary>
    /// <exception cref="RecordsException">It cannot be kept.</exception>
    /// <param name="path">The design's path in the folder.</param>
    /// <param name="who">Who works.</param>
    /// <param name="meter">With which meter.</param>
    /// <param name="fault">Text id of a fault put in on purpose, or null.</param>
    /// <param name="now">When.</param>
    /// <param name="plan">Along which plan; <see cref="BenchSession.OnTheBench"/> or <see cref="BenchSession.OnTheBike"/>.</param>
    public BenchSession? Begin(string path, string who, string meter, string? fault, DateTimeOffset now, string plan = BenchSession.OnTheBench)
    {
        if (folder.Find(path) is not { Trouble: null } document || document.Current is not { Bike.Loom: not null } revision)
        {
            return null;
        }

        Writable();
        var followed = plan == BenchSession.OnTheBike ? revision.Bike.PlanOnTheBike() : Proofs.Begun(path, revision.Sha256, revision.Bike).GetAwaiter().GetResult().Plan;
        var steps = KeptPlan.Text(followed);
        var session = new BenchSession(Guid.CreateVersion7(now).ToString("N"), path, revision.Sha256, plan == BenchSession.OnTheBike ? plan : BenchSession.OnTheBench, fault, Short(who), Short(meter), now) { Steps = KeptPlan.Name(steps) };
        Records.Begin(session, revision.Text.Content, steps);
        return session;
    }

    /// <summary>The plan a session follows: of the design and with the steps it keeps, also when the file has changed since.</summary>
    public Plan Plan(BenchSession session)
    {
        if (_plans.Count > MostPlans)
        {
            _plans.Clear();
            _bikes.Clear();
        }

        return _plans.GetOrAdd((session.Design, session.Plan, session.Steps), _ => KeptPlan.Of(session, BikeOf(session), Records));
    }

    /// <summary>The bike as it stood when a session or a search began.</summary>
    public Bike BikeOf(BenchSession session) => _bikes.GetOrAdd(session.Design, hash =>
        folder.Find(session.Bike) is { } live && live.Current.Sha256 == hash ? live.Current.Bike : Bike.Read(new SourceText(session.Bike, Records.Text(hash)!)));

    /// <summary>What the newest session along each plan checked on a bike, and what it did not.</summary>
    /// <param name="path">The design's path in the folder.</param>
    /// <param name="session">Id of a session told in place of the newest along its plan, or null.</param>
    /// <exception cref="RecordsException">The records cannot be read.</exception>
    public ImmutableArray<TestRecord> Record(string path, string? session = null) => HasRecords ? TestRecord.Newest(Records, path, Plan, session) : [];

    /// <summary>What was told in searches for a cause of a bike, the newest first.</summary>
    /// <exception cref="RecordsException">The records cannot be read.</exception>
    public ImmutableArray<SearchRecord> SearchRecords(string path) => HasRecords ? SearchRecord.Of(Records, path) : [];

    /// <summary>Every path in the folder that something is kept of, also where no file is there any more.</summary>
    /// <exception cref="RecordsException">The records cannot be read.</exception>
    public ImmutableArray<string> Kept() => HasRecords ? Records.Bikes() : [];

    /// <summary>The search of that id; null when none was kept.</summary>
    /// <exception cref="RecordsException">The records cannot be read.</exception>
    public KeptSearch? FindSearch(string id) => Find(id) is { Plan: BenchSession.Search } found ? new(this, found) : null;

    /// <summary>The newest search of a bike as it now stands that holds an answer; null when there is none.</summary>
    /// <exception cref="RecordsException">The records cannot be read.</exception>
    public KeptSearch? NewestSearch(string path) => HasRecords && folder.Find(path)?.Current.Sha256 is { } now
        ? Records.Searches(path).Where(s => s.Design == now && !s.Id.Contains(Separator)).Select(s => new KeptSearch(this, s)).FirstOrDefault(s => s.Answers > 0)
        : null;

    /// <summary>The search from a step of a session; after a change in the stage it is another. Null when none was kept.</summary>
    /// <exception cref="RecordsException">The records cannot be read.</exception>
    public KeptSearch? FindSearch(Handover from) => FindSearch(IdOf(from));

    /// <summary>Begins to keep a search on a design.</summary>
    /// <param name="path">The design's path in the folder.</param>
    /// <param name="sha256">Hash of the design's bytes.</param>
    /// <param name="text">Its text.</param>
    /// <param name="now">When.</param>
    /// <exception cref="RecordsException">It cannot be kept.</exception>
    public KeptSearch BeginSearch(string path, string sha256, string text, DateTimeOffset now) =>
        Begun(new(Guid.CreateVersion7(now).ToString("N"), path, sha256, BenchSession.Search, null, "", "", now), text);

    /// <summary>Begins to keep the search from a step of a session, or goes on with it.</summary>
    /// <exception cref="RecordsException">It cannot be kept.</exception>
    public KeptSearch BeginSearch(Handover from, DateTimeOffset now) =>
        Find(from.Session) is { } session ? Begun(session with { Id = IdOf(from), Plan = BenchSession.Search, Began = now }, Records.Text(session.Design)!)
            : throw new RecordsException(Gone);

    private static string IdOf(Handover from) => string.Create(CultureInfo.InvariantCulture, $"{from.Session}{Separator}{from.Step.Id}{Separator}{from.Round}");

    private KeptSearch Begun(BenchSession search, string text)
    {
        Writable();
        Records.Begin(search, text);
        return new(this, search);
    }

    /// <summary>What a session hands to a search for a cause at one of its steps; null when there is no such session or step. Takes seconds the first time.</summary>
    /// <exception cref="RecordsException">The records cannot be read.</exception>
    public Handover? HandOver(string session, string step)
    {
        var found = Find(session);
        var stage = found is null ? null : Plan(found).Stages.FirstOrDefault(s => s.Steps.Any(x => x.Id == step));
        return stage is null ? null : Handover.Of(session, stage, stage.Steps.First(s => s.Id == step), Records.Entries(session));
    }

    /// <summary>Keeps answers, all of them or none but what is no answer at all; those handed over before count once. More than <see cref="MostAtOnce"/> are refused.</summary>
    public HandedOver Keep(BenchSession session, IReadOnlyList<Given> given)
    {
        if (given.Count > MostAtOnce)
        {
            return new HandedOver.Refused(string.Create(CultureInfo.InvariantCulture, $"These are more than {MostAtOnce} answers at once; hand them over in parts."));
        }

        try
        {
            Writable();
            var plan = Plan(session);
            var judged = given.Select(g => (g.Id, Entry: Judging.Of(plan, session.Id, g))).ToList();
            Records.Keep(session, [.. judged.Select(j => j.Entry).OfType<Entry>()]);
            return new HandedOver.Kept([.. judged.Where(j => j.Entry is null).Select(j => j.Id ?? "")]);
        }
        catch (RecordsException e)
        {
            return new HandedOver.Refused(e.Message);
        }
    }

    /// <summary>Keeps one answer; null when it is durable, else why it is not.</summary>
    public string? KeepOne(string session, Given given)
    {
        try
        {
            return Keep(Find(session) ?? throw new RecordsException(Gone), [given]) switch
            {
                HandedOver.Refused no => no.Why,
                HandedOver.Kept { NotAnswers.IsEmpty: false } => "This is longer than the record takes. Go back to the step and say there what was done.",
                _ => null,
            };
        }
        catch (RecordsException e)
        {
            return e.Message;
        }
    }

    public void Dispose()
    {
        lock (_gate)
        {
            _records?.Dispose();
        }
    }

    /// <summary>Does nothing where this program may write.</summary>
    /// <exception cref="RecordsException">It may not; says why.</exception>
    internal void Writable()
    {
        if (folder.ReadOnly is { } why)
        {
            throw new RecordsException(why);
        }
    }

    // Looking at a folder makes no file in it.
    private bool HasRecords => _records is not null || File.Exists(Path.Combine(folder.Path, RecordFile.FileName));

    private static string Short(string text) => text.Trim() is var trimmed && trimmed.Length > 80 ? trimmed[..80] : trimmed;
}
