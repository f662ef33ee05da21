using System.Collections.Immutable;
using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Loomwright.Records;

/// <summary>
/// What was seen and measured in one folder, in a file of its own beside the designs. A call that returns has made its rows
/// durable: they are there after the machine stops. Safe to call from several threads.
/// </summary>
public sealed class RecordFile : IDisposable
{
    /// <summary>Name of the file in the folder.</summary>
    public const string FileName = "loomwright.records.db";

    private readonly Lock _gate = new();
    private readonly string _path;
    private readonly SqliteConnection? _file;

    // Without a connection it is for reading alone: each question opens the file anew, since another program may begin to write.
    private RecordFile(string path, SqliteConnection? file) => (_path, _file) = (path, file);

    /// <summary>Opens a folder's records to keep more in them; made when there are none yet, brought to this program's form when they are older.</summary>
    /// <exception cref="RecordsException">They cannot be used; says why and what to do.</exception>
    public static RecordFile Open(string folder)
    {
        var path = Path.Combine(folder, FileName);
        return new(path, Opened(Source(path), file =>
        {
            using var settings = file.CreateCommand();
            settings.CommandText = "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL";
            settings.ExecuteNonQuery();
            Migrations.Bring(file);
        }));
    }

    /// <summary>A folder's records as they stand, to look into: nothing is written, also where nothing can be.</summary>
    public static RecordFile OpenToRead(string folder) => new(Path.GetFullPath(Path.Combine(folder, FileName)), null);

    /// <summary>Keeps a session's beginning, the whole text of its design and the steps of its plan. Doing it twice keeps it once.</summary>
    public void Begin(BenchSession session, string designText, string steps = "") => Whole(whole =>
    {
        const string keep = "INSERT INTO texts VALUES ($sha256, $text) ON CONFLICT (sha256) DO NOTHING";
        Run(whole, keep, ("$sha256", session.Design), ("$text", designText));
        if (session.Steps is { } kept)
        {
            Run(whole, keep, ("$sha256", kept), ("$text", steps));
        }

        Run(
            whole,
            "INSERT INTO sessions (id, bike, design, plan, fault, who, meter, began, steps) VALUES ($id, $bike, $design, $plan, $fault, $who, $meter, $began, $steps) ON CONFLICT (id) DO NOTHING",
            ("$id", session.Id),
            ("$bike", session.Bike),
            ("$design", session.Design),
            ("$plan", session.Plan),
            ("$fault", session.Fault),
            ("$who", session.Who),
            ("$meter", session.Meter),
            ("$began", Instant(session.Began)),
            ("$steps", session.Steps));
    });

    /// <summary>Keeps entries of one known session, all or none; those whose id is kept already stay as they are.</summary>
    public void Keep(BenchSession session, IReadOnlyList<Entry> entries) => Whole(whole =>
    {
        foreach (var entry in entries)
        {
            Run(whole, Rows.Insert, [.. Rows.Of(session, entry)]);
        }
    });

    /// <summary>The session of that id, or null.</summary>
    public BenchSession? Session(string id) => Ask("SELECT * FROM sessions WHERE id = $id", Rows.Session, ("$id", id)).FirstOrDefault();

    /// <summary>The paths of all bikes that something was kept of, in the order of their names.</summary>
    public ImmutableArray<string> Bikes() => Ask("SELECT DISTINCT bike FROM sessions ORDER BY bike", r => r.GetString(0));

    /// <summary>A bike's sessions along a plan, the newest first.</summary>
    public ImmutableArray<BenchSession> Sessions(string bike) => Ask("SELECT * FROM sessions WHERE bike = $bike AND plan <> $search ORDER BY rowid DESC", Rows.Session, ("$bike", bike), ("$search", BenchSession.Search));

    /// <summary>A bike's searches for a cause that began from a symptom or a step, the newest first.</summary>
    public ImmutableArray<BenchSession> Searches(string bike) => Ask("SELECT * FROM sessions WHERE bike = $bike AND plan = $search ORDER BY rowid DESC", Rows.Session, ("$bike", bike), ("$search", BenchSession.Search));

    /// <summary>A session's entries in the order of keeping, from after a number on.</summary>
    public ImmutableArray<Entry> Entries(string session, long after = 0) =>
        Ask("SELECT * FROM entries WHERE session = $session AND number > $after ORDER BY number", Rows.Entry, ("$session", session), ("$after", after));

    /// <summary>The whole text of a design that a session was about, or of the steps it followed; or null.</summary>
    public string? Text(string sha256) => Ask("SELECT text FROM texts WHERE sha256 = $hash", r => r.GetString(0), ("$hash", sha256)).FirstOrDefault();

    public void Dispose()
    {
        lock (_gate)
        {
            _file?.Dispose();
        }
    }

    internal static string Instant(DateTimeOffset at) => at.ToString("yyyy-MM-dd'T'HH:mm:ss.fffzzz", CultureInfo.InvariantCulture);

    private static SqliteConnectionStringBuilder Source(string path) => new() { DataSource = path, Pooling = false, ForeignKeys = true };

    private static SqliteConnection Opened(SqliteConnectionStringBuilder source, Action<SqliteConnection> prepare)
    {
        var file = new SqliteConnection(source.ToString());
        try
        {
            file.Open();
            if (Migrations.Form(file) > Migrations.Newest)
            {
                throw new RecordsException($"{FileName} was written by a newer Loomwright. Open the folder with that one.");
            }

            prepare(file);
            return file;
        }
        catch (SqliteException e)
        {
            file.Dispose();
            throw new RecordsException($"{FileName} cannot be used: {e.Message}. {Cure(e)}.", e);
        }
        catch (RecordsException)
        {
            file.Dispose();
            throw;
        }
    }

    // Locked; no file of this kind any more; all else has to do with rights and room.
    internal static string Cure(SqliteException e) => e.SqliteErrorCode switch
    {
        5 or 6 => "Another program is writing it: wait for that or end it, and try again",
        1 or 11 or 26 => "Move that file away, or put a copy of it back",
        _ => "Look at the rights of the folder and the room on its disk, or copy it elsewhere",
    };

    // What nobody writes now needs no files beside it, which could not be made on a disk that takes none. Older rows are brought to this form in memory.
    private SqliteConnection ToRead()
    {
        var log = new FileInfo(_path + "-wal");
        var source = Source(_path);
        source.Mode = SqliteOpenMode.ReadOnly;
        source.DataSource = log is { Exists: true, Length: > 0 } ? _path : $"{new Uri(_path).AbsoluteUri}?immutable=1";
        var file = Opened(source, _ => { });
        if (Migrations.Form(file) == Migrations.Newest)
        {
            return file;
        }

        using (file)
        {
            return Opened(new() { DataSource = ":memory:" }, copy =>
            {
                file.BackupDatabase(copy);
                Migrations.Bring(copy);
            });
        }
    }

    private void Whole(Action<SqliteTransaction> what)
    {
        lock (_gate)
        {
            try
            {
                using var whole = (_file ?? throw new RecordsException($"{FileName} was opened to look into; nothing is kept.")).BeginTransaction();
                what(whole);
                whole.Commit();
            }
            catch (SqliteException e)
            {
                throw new RecordsException($"{FileName} could not be written: {e.Message}. Nothing of this was kept. {Cure(e)}.", e);
            }
        }
    }

    private ImmutableArray<T> Ask<T>(string question, Func<SqliteDataReader, T> read, params (string Name, object? Value)[] values)
    {
        lock (_gate)
        {
            try
            {
                using var opened = _file is null ? ToRead() : null;
                using var ask = Command(opened ?? _file!, question, values);
                using var rows = ask.ExecuteReader();
                var found = ImmutableArray.CreateBuilder<T>();
                while (rows.Read())
                {
                    found.Add(read(rows));
                }

                return found.ToImmutable();
            }
            catch (Exception e) when (e is SqliteException or FormatException or ArgumentException)
            {
                throw new RecordsException($"{FileName} could not be read: {e.Message}. {(e is SqliteException file ? Cure(file) : "Move that file away, or put a copy of it back")}.", e);
            }
        }
    }

    private static void Run(SqliteTransaction whole, string text, params (string Name, object? Value)[] values)
    {
        using var run = Command(whole.Connection!, text, values);
        run.ExecuteNonQuery();
    }

    private static SqliteCommand Command(SqliteConnection file, string text, (string Name, object? Value)[] values)
    {
        var command = file.CreateCommand();
        command.CommandText = text;
        foreach (var (name, value) in values)
        {
            command.Parameters.AddWithValue(name, value ?? DBNull.Value);
        }

        return command;
    }
}
