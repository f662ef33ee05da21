using Microsoft.Data.Sqlite;

namespace Loomwright.Records;

/// <summary>Brings a records file to the form this program writes, whole or not at all.</summary>
internal static class Migrations
{
    // A step is never altered once it has been in a release: a new form is a new step at the end.
    private static readonly string[] Steps =
    [
        """
        CREATE TABLE texts (sha256 TEXT PRIMARY KEY, text TEXT NOT NULL) STRICT, WITHOUT ROWID;
        CREATE TABLE sessions (
            id TEXT PRIMARY KEY, bike TEXT NOT NULL, design TEXT NOT NULL REFERENCES texts, plan TEXT NOT NULL,
            fault TEXT, who TEXT NOT NULL, meter TEXT NOT NULL, began TEXT NOT NULL) STRICT;
        CREATE TABLE entries (
            number INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, session TEXT NOT NULL REFERENCES sessions,
            bike TEXT NOT NULL, design TEXT NOT NULL REFERENCES texts, fault TEXT, who TEXT NOT NULL, meter TEXT NOT NULL,
            step TEXT NOT NULL, kind TEXT NOT NULL, about TEXT NOT NULL, what TEXT NOT NULL, raw TEXT NOT NULL,
            value REAL, unit TEXT, least REAL, most REAL, verdict TEXT NOT NULL, undoes TEXT, at TEXT NOT NULL) STRICT;
        CREATE INDEX entries_by_session ON entries (session, number);
        CREATE INDEX sessions_by_bike ON sessions (bike, began);
        """,
        "ALTER TABLE sessions ADD COLUMN steps TEXT REFERENCES texts",
    ];

    /// <summary>The form this program writes.</summary>
    public static int Newest => Steps.Length;

    /// <summary>Which form the file has; 0 is a new one.</summary>
    public static int Form(SqliteConnection file)
    {
        using var ask = file.CreateCommand();
        ask.CommandText = "PRAGMA user_version";
        return Convert.ToInt32(ask.ExecuteScalar(), System.Globalization.CultureInfo.InvariantCulture);
    }

    public static void Bring(SqliteConnection file)
    {
        if (Form(file) >= Newest)
        {
            return;
        }

        // Looked at anew when nobody else may write: another program may have brought it meanwhile.
        using var whole = file.BeginTransaction();
        for (var form = Form(file); form < Newest; form++)
        {
            using var make = file.CreateCommand();
            make.CommandText = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Steps[form]}; PRAGMA user_version = {form + 1}");
            make.ExecuteNonQuery();
        }

        whole.Commit();
    }
}
