using System.Collections.Immutable;

namespace Loomwright.Simulation;

/// <summary>One thing done at the bike: a control moved, or time let pass. Each is settled before the next.</summary>
public abstract record Operation
{
    private Operation()
    {
    }

    /// <summary>Moves a control to a position and leaves it there.</summary>
    public sealed record Set(string Control, string Position) : Operation;

    /// <summary>Presses a momentary control and lets it go again: two settled steps.</summary>
    public sealed record Tap(string Control) : Operation;

    /// <summary>Lets time pass; timers run out on the way, each settled.</summary>
    public sealed record Wait(TimeSpan Time) : Operation;
}
