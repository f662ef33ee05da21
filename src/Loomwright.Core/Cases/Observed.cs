using System.Globalization;
using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Cases;

/// <summary>What somebody who looks at one thing sees, and what an instrument reads there; null for what it has not.</summary>
internal sealed record Observed(string? Symbol, double? Volts, double? Amps, double? Light)
{
    private const string AnyOf = "any of ";

    /// <summary>
    /// What is there and whether a word told of it holds; null when nothing is called so. Of several, written
    /// <c>any of lamp, other lamp</c>, the first of which it holds, else the first.
    /// </summary>
    public static Shown? Shown(string what, string word, Rig rig)
    {
        if (!what.StartsWith(AnyOf, StringComparison.Ordinal))
        {
            return At(what, rig) is { } one ? new(one.Words(word), one.Holds(word)) : null;
        }

        var all = what[AnyOf.Length..].Split(',', StringSplitOptions.TrimEntries).Select(name => (name, Shown: Shown(name, word, rig))).ToList();
        if (all.Exists(s => s.Shown is null))
        {
            return null;
        }

        var (first, shown) = all.Find(s => s.Shown!.Holds) is { Shown: not null } holding ? holding : all[0];
        return shown! with { Words = $"{first}: {shown.Words}" };
    }

    /// <summary>Looks at a part, <c>part.element</c>, a wire, or with a meter from one terminal to another; null when nothing is called so.</summary>
    public static Observed? At(string what, Rig rig) => Seen(what, rig.Now) ?? Fuse(what, rig.Now) ?? Relay(what, rig.Now) ?? Wire(what, rig.Now) ?? Meter(what, rig);

    /// <summary>Whether a word told of it holds: a symbol, <c>not</c> and a symbol, or a band. “flashing” is any rate.</summary>
    public bool Holds(string word) =>
        Band.Read(word) is { } band ? band.Holds(In(band.Unit))
        : Symbol is null ? false
        : word.StartsWith("not ", StringComparison.Ordinal) ? !Holds(word[4..])
        : word == Symbol || (word == "flashing" && Symbol.StartsWith(word, StringComparison.Ordinal));

    /// <summary>The same in words, in the units the told word asks for.</summary>
    public string Words(string word) => Band.Read(word) is not { } band ? Symbol ?? "?" : In(band.Unit) is not { } value ? "?" : band.Unit switch
    {
        Unit.Volt => new Voltage(value).ToString(),
        Unit.Amp => new Current(value).ToString(),
        _ => string.Create(CultureInfo.InvariantCulture, $"{value * 100:0.#} % light"),
    };

    private double? In(Unit unit) => unit switch { Unit.Volt => Volts, Unit.Amp => Amps, _ => Light };

    private static Observed? Seen(string what, Frame frame) =>
        frame.Seen.FirstOrDefault(s => Names.Same(s.Name, what)) is { } seen ? new(Simulation.Words.Written(seen.Symbol), seen.Voltage.Volts, seen.Current.Amps, seen.LightShare) : null;

    private static Observed? Fuse(string what, Frame frame) =>
        frame.Fuses.FirstOrDefault(f => Names.Same(f.Part, what)) is { } fuse ? new(fuse.State.ToString().ToLowerInvariant(), null, Math.Abs(fuse.Current.Amps), null) : null;

    // What never rests may be caught either way: one hears it.
    private static Observed? Relay(string what, Frame frame) => frame.Relays.FirstOrDefault(r => Names.Same(r.Part, what)) is not { } relay ? null
        : new(frame.Outcome == Outcome.SwitchesByItself ? "clicks again and again" : relay.PulledIn ? "pulled in" : "let go", null, null, null);

    private static Observed? Wire(string what, Frame frame)
    {
        var seen = frame.Phases.SelectMany(p => p.Wires).Where(w => Names.Same(w.Wire, what)).ToList();
        return seen.Count == 0 ? null : new(null, seen.Max(w => Math.Abs(w.Drop.Volts)), seen.Max(w => Math.Abs(w.Current.Amps)), null);
    }

    private static Observed? Meter(string what, Rig rig) =>
        what.Split(" to ") is [var red, var black] && rig.Volts(Terminal(red), Terminal(black)) is { } volts ? new(null, volts.Volts, null, null) : null;

    private static TerminalRef Terminal(string written) => written.Split('.', 2) is [var part, var mark] ? new(part.Trim(), mark.Trim()) : new(written.Trim(), "");
}
