using Loomwright.Design;

namespace Loomwright.Faults;

/// <summary>A single thing wrong with the bike, with a stable text id (<c>open: stop lamp feed</c>).</summary>
public abstract record Fault
{
    private Fault()
    {
    }

    /// <summary><c>open: WIRE</c>: left out, broken or not seated.</summary>
    public sealed record Open(string Wire) : Fault;

    /// <summary><c>moved: WIRE end TERMINAL to TERMINAL</c>: one end sits on another terminal.</summary>
    public sealed record Moved(string Wire, TerminalRef End, TerminalRef To) : Fault;

    /// <summary><c>swapped: TERMINAL with TERMINAL</c>: all wire ends of the two exchanged.</summary>
    public sealed record Swapped(TerminalRef A, TerminalRef B) : Fault;

    /// <summary><c>lost: GROUND</c>: the stud's own lead back to battery minus is off.</summary>
    public sealed record Lost(string Ground) : Fault;

    /// <summary><c>short: A to B</c>: two terminals touch.</summary>
    public sealed record Shorted(TerminalRef A, TerminalRef B) : Fault;

    /// <summary><c>dead: PART</c>.</summary>
    public sealed record Dead(string Part) : Fault;

    /// <summary><c>reversed: PART</c>: plus and minus exchanged.</summary>
    public sealed record Reversed(string Part) : Fault;

    /// <summary>The stable text id.</summary>
    public sealed override string ToString() => this switch
    {
        Open f => $"open: {f.Wire}",
        Moved f => $"moved: {f.Wire} end {f.End} to {f.To}",
        Swapped f => $"swapped: {f.A} with {f.B}",
        Lost f => $"lost: {f.Ground}",
        Shorted f => $"short: {f.A} to {f.B}",
        Dead f => $"dead: {f.Part}",
        Reversed f => $"reversed: {f.Part}",
        _ => throw new InvalidOperationException("a fault of no known form"),
    };
}
