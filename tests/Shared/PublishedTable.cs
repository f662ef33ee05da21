using System.Globalization;
using System.Runtime.CompilerServices;

namespace Loomwright.Tests;

/// <summary>A table of published figures under <c>tests/published</c>: comment lines that name the source, a header row, comma-separated rows.</summary>
public sealed record PublishedTable(IReadOnlyList<PublishedRow> Rows)
{
    /// <summary>Reads a table by its path below <c>tests/published</c>.</summary>
    public static PublishedTable Read(string name) => ReadFile(PathOf(name));

    /// <summary>Reads a table anywhere on disk.</summary>
    public static PublishedTable ReadFile(string path)
    {
        var lines = File.ReadLines(path).Where(line => line.Length > 0 && line[0] != '#').Select(Cells).ToList();
        var header = lines[0];
        return new([.. lines.Skip(1).Select(cells => new PublishedRow(
            header.Zip(cells).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal)))]);
    }

    /// <summary>False when <c>LOOMWRIGHT_REFERENCE</c> names another folder: its tables may have fewer rows than ours, or others.</summary>
    public static bool IsOurs { get; } = Environment.GetEnvironmentVariable("LOOMWRIGHT_REFERENCE") is not { Length: > 0 };

    /// <summary>The full path of something below <c>tests/published</c>, or below the folder of the same form that <c>LOOMWRIGHT_REFERENCE</c> names.</summary>
    public static string PathOf(string name) =>
        Path.Combine(Environment.GetEnvironmentVariable("LOOMWRIGHT_REFERENCE") is { Length: > 0 } other ? other : Path.Combine(Path.GetDirectoryName(ThisFile())!, "..", "published"), name);

    private static string ThisFile([CallerFilePath] string path = "") => path;

    private static List<string> Cells(string line)
    {
        var cells = new List<string>();
        var cell = new System.Text.StringBuilder();
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add(cell.ToString());
        return cells;
    }
}

/// <summary>One row, by column name.</summary>
public sealed record PublishedRow(IReadOnlyDictionary<string, string> Cells)
{
    public string this[string column] => Cells[column];

    /// <summary>The number in a column, invariant culture.</summary>
    public double Number(string column) => double.Parse(Cells[column], NumberStyles.Float, CultureInfo.InvariantCulture);
}
