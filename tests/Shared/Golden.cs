using System.Collections.Concurrent;
using System.Runtime.CompilerServices;

[assembly: AssemblyFixture(typeof(Loomwright.Tests.Golden.NoOrphans))]

namespace Loomwright.Tests;

/// <summary>
/// Compares a text with the accepted one in <c>goldens/</c> beside the test project. <c>UPDATE_GOLDEN=1</c> accepts what is new;
/// a build server (<c>CI</c> set) never updates; after a whole run a golden nobody asked for fails.
/// </summary>
public static class Golden
{
    private static readonly ConcurrentDictionary<string, bool> Asked = new(StringComparer.Ordinal);

    private static string? _folder;

    /// <summary>Checks <paramref name="text"/> against <c>goldens/NAME</c>; the name carries its folder and ending (<c>check/lock.txt</c>).</summary>
    public static void Check(string name, string text, [CallerFilePath] string caller = "")
    {
        var path = Path.Combine(Folder(caller), name);
        Asked[Path.GetFullPath(path)] = true;
        var ours = text.ReplaceLineEndings("\n");
        var accepted = File.Exists(path) ? File.ReadAllText(path) : null;
        if (ours == accepted)
        {
            return;
        }

        var update = Environment.GetEnvironmentVariable("UPDATE_GOLDEN") == "1";
        var server = !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI"));
        if (update && !server)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, ours);
            return;
        }

        Assert.Fail($"{name} differs from the accepted text. Look at it; UPDATE_GOLDEN=1 accepts it.\n--- now ---\n{ours}\n--- accepted ---\n{accepted ?? "(none)"}");
    }

    private static string Folder(string caller)
    {
        if (_folder is not null)
        {
            return _folder;
        }

        var at = Path.GetDirectoryName(caller)!;
        while (Directory.GetFiles(at, "*.csproj").Length == 0)
        {
            at = Path.GetDirectoryName(at)!;
        }

        return _folder = Path.Combine(at, "goldens");
    }

    /// <summary>After a whole run (<c>LOOMWRIGHT_WHOLE_RUN=1</c>, as <c>./test</c> sets it) no golden may be left unasked for.</summary>
    public sealed class NoOrphans : IDisposable
    {
        public void Dispose()
        {
            if (Environment.GetEnvironmentVariable("LOOMWRIGHT_WHOLE_RUN") != "1" || _folder is null || !Directory.Exists(_folder))
            {
                return;
            }

            var orphans = Directory.GetFiles(_folder, "*", SearchOption.AllDirectories).Where(f => !Asked.ContainsKey(Path.GetFullPath(f))).ToList();
            if (orphans.Count > 0)
            {
                throw new InvalidOperationException("goldens no test asks for: " + string.Join(", ", orphans));
            }
        }
    }
}
