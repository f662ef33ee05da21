using Loomwright.Design;

namespace Loomwright.Walk;

/// <summary>How far a walk goes and who is told.</summary>
public sealed record WalkOptions
{
    /// <summary>More states than these are not walked.</summary>
    public int MostStates { get; init; } = 2_000_000;

    /// <summary>Ends with the first operation's round that finds a surprise.</summary>
    public bool StopAtFirstSurprise { get; init; }

    /// <summary>The design without the mistake: full light is measured there. Null: the loom itself.</summary>
    public Loom? Healthy { get; init; }

    /// <summary>Workers side by side. The answer does not depend on it.</summary>
    public int Workers { get; init; } = 2;

    /// <summary>Told now and then how far the walk has come; called by the thread that walks.</summary>
    public Action<WalkProgress>? Progress { get; init; }

    /// <summary>Ends the walk where it is; what was found until then is the answer.</summary>
    public CancellationToken Stop { get; init; }
}
