using Loomwright.Records;
using Loomwright.Sessions;

namespace Loomwright.Web.Cause;

/// <summary>Hands the answers of one search to the record, in their order; what could not be kept is handed over again with the next.</summary>
public sealed class Keeping
{
    private readonly Queue<Func<KeptSearch, string?>> _waiting = [];

    /// <summary>The search in the record; null before anything is kept.</summary>
    public KeptSearch? Kept { get; private set; }

    /// <summary>Why not everything is kept; null when all is durable.</summary>
    public string? Not { get; private set; }

    /// <summary>Looks for something in the record; null when it is not there or cannot be read.</summary>
    public T? Look<T>(Func<T?> find)
        where T : class
    {
        try
        {
            return find();
        }
        catch (RecordsException e)
        {
            Not = e.Message;
            return null;
        }
    }

    /// <summary>Goes on with a kept search.</summary>
    public void GoOn(KeptSearch? kept) => Kept = kept;

    /// <summary>Keeps one more thing, and what waits from before.</summary>
    /// <param name="begin">Begins the search in the record.</param>
    /// <param name="what">Keeps it; gives why not, or null.</param>
    public void Keep(Func<KeptSearch> begin, Func<KeptSearch, string?> what)
    {
        _waiting.Enqueue(what);
        Kept ??= Look(begin);
        if (Kept is null)
        {
            return;
        }

        Not = null;
        while (Not is null && _waiting.TryPeek(out var next))
        {
            Not = next(Kept);
            _ = Not is null && _waiting.TryDequeue(out _);
        }
    }
}
