using Loomwright.Tests;

namespace Loomwright.Long;

/// <summary>Spoilt design files: reading each gives a loom or says where it is broken, never an exception, and comes to an end.</summary>
internal static class SpoiltFiles
{
    private const int Usual = 20_000;
    private const int SecondsOfPatience = 20;

    public static string Run(LongRun run)
    {
        var designs = Directory.GetFiles("examples", "*.loom.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(File.ReadAllText).ToList();
        var count = run.Count ?? Usual;
        var broken = new List<string>();
        var slowestSeconds = 0.0;
        for (var k = 0; k < count; k++)
        {
            var seed = unchecked((int)run.Seed + k);
            var spoilt = Mutants.Of(designs[k % designs.Count], seed);
            var began = System.Diagnostics.Stopwatch.GetTimestamp();
            if (ReadingPromise.BrokenBy(spoilt, TimeSpan.FromSeconds(SecondsOfPatience)) is { } why)
            {
                broken.Add(FormattableString.Invariant($"- seed {seed}, example {k % designs.Count}: {why.Split('\n')[0]}"));
            }

            slowestSeconds = Math.Max(slowestSeconds, System.Diagnostics.Stopwatch.GetElapsedTime(began).TotalSeconds);
            run.Progress(k + 1, count);
        }

        run.Failed = broken.Count > 0;
        return FormattableString.Invariant($"""
            | | |
            |---|---|
            | spoilt files, from {designs.Count} examples | {count} |
            | exceptions, hangs over {SecondsOfPatience} s, or neither a loom nor a located finding | {broken.Count} |
            | slowest file, s | {slowestSeconds:F2} |

            {string.Join('\n', broken.Take(20))}

            """).TrimEnd() + "\n";
    }
}
