using Loomwright.Cases;
using Loomwright.Design;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Tests.Cases;

/// <summary>The case folders on disk.</summary>
internal static class Folders
{
    /// <summary>The published cases, or with <c>LOOMWRIGHT_CASES</c> those in that folder.</summary>
    public static string Root { get; } =
        Environment.GetEnvironmentVariable("LOOMWRIGHT_CASES") is { Length: > 0 } further ? further : Path.Combine(Repository.Root, "tests/published/cases");

    public static bool ArePublished { get; } = Environment.GetEnvironmentVariable("LOOMWRIGHT_CASES") is not { Length: > 0 };

    public static IEnumerable<string> Numbers => Directory.GetDirectories(Root).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal);

    public static CaseFile File(string number) => CaseFile.Read(Text(number, "case"));

    public static Loom Loom(string number)
    {
        var file = DesignFile.Read(Text(number, "loom"));
        return file.IsComplete ? file.Loom! : throw new InvalidOperationException($"case {number}: " + string.Join("; ", file.Findings.Select(f => f.What)));
    }

    public static Trial Trial(string number) => Loomwright.Cases.Trial.Of(Loom(number), File(number).Case!);

    public static SourceText Text(string number, string what) =>
        new($"{number}.{what}.yaml", System.IO.File.ReadAllText(Path.Combine(Root, number, $"{number}.{what}.yaml")));
}
