using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Loomwright.Records;

/// <summary>Entries and sessions as rows. Each row of the record says all of itself, so that it can be read without the others.</summary>
internal static class Rows
{
    public const string Insert = """
        INSERT INTO entries
            (id, session, bike, design, fault, who, meter, step, kind, about, what, raw, value, unit, least, most, verdict, undoes, at)
        VALUES ($id, $session, $bike, $design, $fault, $who, $meter, $step, $kind, $about, $what, $raw, $value, $unit, $least, $most, $verdict, $undoes, $at)
        ON CONFLICT (id) DO NOTHING
        """;

    public static IEnumerable<(string Name, object? Value)> Of(BenchSession session, Entry entry) =>
    [
        ("$id", entry.Id),
        ("$session", session.Id),
        ("$bike", session.Bike),
        ("$design", session.Design),
        ("$fault", session.Fault),
        ("$who", session.Who),
        ("$meter", session.Meter),
        ("$step", entry.Step),
        ("$kind", entry.Kind.ToString()),
        ("$about", entry.About),
        ("$what", entry.What),
        ("$raw", entry.Raw),
        ("$value", entry.Value),
        ("$unit", entry.Unit),
        ("$least", entry.Least),
        ("$most", entry.Most),
        ("$verdict", entry.Verdict.ToString()),
        ("$undoes", entry.Of),
        ("$at", RecordFile.Instant(entry.At)),
    ];

    public static BenchSession Session(SqliteDataReader row) => new(
        Text(row, "id")!, Text(row, "bike")!, Text(row, "design")!, Text(row, "plan")!, Text(row, "fault"), Text(row, "who")!, Text(row, "meter")!, At(row, "began"))
    {
        Steps = Text(row, "steps"),
    };

    public static Entry Entry(SqliteDataReader row) => new(
        Text(row, "id")!,
        Text(row, "session")!,
        Text(row, "step")!,
        Enum.Parse<EntryKind>(Text(row, "kind")!),
        Text(row, "about")!,
        Text(row, "what")!,
        Text(row, "raw")!,
        Number(row, "value"),
        Text(row, "unit"),
        Number(row, "least"),
        Number(row, "most"),
        Enum.Parse<Verdict>(Text(row, "verdict")!),
        Text(row, "undoes"),
        At(row, "at"))
    {
        Number = row.GetInt64(row.GetOrdinal("number")),
    };

    private static string? Text(SqliteDataReader row, string name) => row.IsDBNull(row.GetOrdinal(name)) ? null : row.GetString(row.GetOrdinal(name));

    private static double? Number(SqliteDataReader row, string name) => row.IsDBNull(row.GetOrdinal(name)) ? null : row.GetDouble(row.GetOrdinal(name));

    private static DateTimeOffset At(SqliteDataReader row, string name) => DateTimeOffset.Parse(Text(row, name)!, CultureInfo.InvariantCulture);
}
