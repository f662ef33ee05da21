using System.Runtime.CompilerServices;

namespace Loomwright.Tests;

/// <summary>Where the checkout is, for tests that read its own files.</summary>
public static class Repository
{
    public static string Root { get; } = Find();

    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    private static string Find([CallerFilePath] string here = "")
    {
        var at = Path.GetDirectoryName(here)!;
        while (!File.Exists(Path.Combine(at, "Loomwright.slnx")))
        {
            at = Path.GetDirectoryName(at)!;
        }

        return at;
    }
}
