using System.Collections.Concurrent;
using Loomwright.Proof;

namespace Loomwright.Sessions;

/// <summary>
/// What the plans of designs catch, worked out beside everything else, one at a time and once for each content of a file
/// in this program. Steps of a plan keep their ids when measurements are added, so it may be taken up at any time.
/// </summary>
public static class Proofs
{
    private const int MostKept = 16;

    private static readonly ConcurrentDictionary<string, Lazy<Task<Proven>>> Known = new(StringComparer.Ordinal);
    private static readonly SemaphoreSlim OneAtATime = new(1);

    /// <summary>The proof of a design that has been read; null until it is ready. Begins it when it is asked for the first time.</summary>
    public static Proven? Of(string path, string sha256, Bike bike) => Begun(path, sha256, bike) is { IsCompleted: true } proof ? proof.GetAwaiter().GetResult() : null;

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

    private static string Key(string path, string sha256) => $"{sha256} {path}";

    private static Proven Prove(Bike bike)
    {
        OneAtATime.Wait();
        try
        {
            return bike.Proof();
        }
        finally
        {
            OneAtATime.Release();
        }
    }
}
