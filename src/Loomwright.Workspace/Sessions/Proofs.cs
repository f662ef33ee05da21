using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Loomwright.Proof;

namespace Loomwright.Sessions;

/// <summary>
/// What the plans of designs catch, worked out beside everything else, one at a time and once for each content of a file
/// in this program.
/// </summary>
public static class Proofs
{
    private const int MostKept = 16;

    private static readonly ConcurrentDictionary<string, Lazy<Task<Proven>>> Known = new(StringComparer.Ordinal);
    private static readonly ConcurrentDictionary<Bike, Stopwatch> Running = new(ReferenceEqualityComparer.Instance);
    private static readonly SemaphoreSlim OneAtATime = new(1);

    /// <summary>The proof when it is there already; looking at a plan begins none, since a large bike's takes minutes.</summary>
    public static Proven? Ready(string path, string sha256) =>
        Known.TryGetValue(Key(path, sha256), out var begun) && begun is { IsValueCreated: true, Value.IsCompletedSuccessfully: true } ? begun.Value.Result : null;

    /// <summary>The work itself, begun when it is asked for the first time.</summary>
    public static Task<Proven> Begun(string path, string sha256, Bike bike)
    {
        if (Known.Count > MostKept)
        {
            Known.Clear();
        }

        return Known.GetOrAdd(Key(path, sha256), _ => new(() => Task.Run(() => Prove(bike)))).Value;
    }

    /// <summary>How far the work is, in words for a person who waits for it; null when it is ready. Begins it when it is asked for the first time.</summary>
    public static string? Waiting(string path, string sha256, Bike bike)
    {
        if (Begun(path, sha256, bike) is { IsCompleted: true })
        {
            return null;
        }

        const string what = "Working out which further checks before power are needed";
        return bike.ProofDone is > 0.02 and var done && Running.TryGetValue(bike, out var clock)
            ? string.Create(CultureInfo.InvariantCulture, $"{what} (about {Math.Max(1, Math.Ceiling(clock.Elapsed.TotalSeconds * (1 - done) / done)):0} s more).")
            : $"{what} (some seconds; on a large bike minutes).";
    }

    private static string Key(string path, string sha256) => $"{sha256} {path}";

    private static Proven Prove(Bike bike)
    {
        OneAtATime.Wait();
        try
        {
            Running[bike] = Stopwatch.StartNew();
            return bike.Proof();
        }
        finally
        {
            Running.TryRemove(bike, out _);
            OneAtATime.Release();
        }
    }
}
