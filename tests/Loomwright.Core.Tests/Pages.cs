using System.Runtime.CompilerServices;

namespace Loomwright.Tests;

/// <summary>The pages under docs/, read as they stand, so that page and test cannot differ.</summary>
public static class Pages
{
    /// <summary>A file of the repository by its path from the root.</summary>
    public static string Read(string path) => File.ReadAllText(Path.Combine(Root(), path));

    /// <summary>The rows of the table under a heading, cells trimmed and out of their back-ticks; the two head rows left out.</summary>
    public static IEnumerable<string[]> Table(string path, string heading) =>
        Read(path).ReplaceLineEndings("\n").Split('\n')
            .SkipWhile(line => line.TrimStart('#') != " " + heading)
            .Skip(1)
            .TakeWhile(line => !line.StartsWith('#'))
            .Where(line => line.StartsWith('|'))
            .Skip(2)
            .Select(line => line.Trim('|').Split('|').Select(cell => cell.Trim().Trim('`')).ToArray());

    /// <summary>The repository's folder.</summary>
    public static string Root([CallerFilePath] string here = "")
    {
        var at = Path.GetDirectoryName(here)!;
        while (!File.Exists(Path.Combine(at, "Loomwright.slnx")))
        {
            at = Path.GetDirectoryName(at)!;
        }

        return at;
    }
}
