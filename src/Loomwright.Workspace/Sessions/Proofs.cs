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
    public static Proven? Of(string path, string sha256, Bike bike)
    {
        if (Known.Count > MostKept)
        {
            Known.Clear();
        }

        var proof = Known.GetOrAdd($"{sha256} {path}", _ => new(() => Task.Run(() => Prove(bike)))).Value;
        return proof.IsCompleted ? proof.GetAwaiter().GetResult() : null;
    }

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
