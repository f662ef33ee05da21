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

    /// <summary><c>dead: PART</c>, or one thing in it: a lamp's filament by its name, a box's output by its terminal, <c>dead: headlamp.dip</c>.</summary>
    public sealed record Dead(string Part, string? Inside = null) : Fault;

    /// <summary><c>reversed: PART</c>: plus and minus exchanged.</summary>
    public sealed record Reversed(string Part) : Fault;

    /// <summary><c>high: JOINT 0.5 ohm</c>: a bad joint in a wire, in a stud's own lead, or where a part sits on a ground body.</summary>
    public sealed record High(string Joint, double Ohms) : Fault;

    /// <summary><c>stuck: SWITCH at POSITION</c>: its contacts no longer follow; a relay's stay pulled in or released.</summary>
    public sealed record Stuck(string Switch, string At) : Fault;

    /// <summary><c>leak: PART 30 ohm</c>: its open contacts conduct.</summary>
    public sealed record Leak(string Part, double Ohms) : Fault;

    /// <summary><c>setting: PART KEY VALUE</c>: set to something else than the design says; a key within a key after a stroke.</summary>
    public sealed record Setting(string Part, string Key, string Value) : Fault;

    /// <summary>What is wrong, the first word of the id: <c>open</c>, <c>moved</c>, …</summary>
    public string Kind => ToString().Split(':')[0];

    /// <summary>The wire, terminal, ground, switch or part it is about.</summary>
    public string Subject => this switch
    {
        Open f => f.Wire,
        Moved f => f.Wire,
        Swapped f => f.A.ToString(),
        Lost f => f.Ground,
        Shorted f => f.A.ToString(),
        Dead f => f.Part,
        Reversed f => f.Part,
        High f => f.Joint,
        Stuck f => f.Switch,
        Leak f => f.Part,
        Setting f => f.Part,
        _ => throw new InvalidOperationException("a fault of no known form"),
    };

    /// <summary>The stable text id.</summary>
    public sealed override string ToString() => this switch
    {
        Open f => $"open: {f.Wire}",
        Moved f => $"moved: {f.Wire} end {f.End} to {f.To}",
        Swapped f => $"swapped: {f.A} with {f.B}",
        Lost f => $"lost: {f.Ground}",
        Shorted f => $"short: {f.A} to {f.B}",
        Dead f => f.Inside is null ? $"dead: {f.Part}" : $"dead: {f.Part}.{f.Inside}",
        Reversed f => $"reversed: {f.Part}",
        High f => FormattableString.Invariant($"high: {f.Joint} {f.Ohms:0.######} ohm"),
        Stuck f => $"stuck: {f.Switch} at {f.At}",
        Leak f => FormattableString.Invariant($"leak: {f.Part} {f.Ohms:0.######} ohm"),
        Setting f => $"setting: {f.Part} {f.Key} {f.Value}",
        _ => throw new InvalidOperationException("a fault of no known form"),
    };
}
