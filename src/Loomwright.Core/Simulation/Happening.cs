using System.Collections.Immutable;
using Loomwright.Quantities;

namespace Loomwright.Simulation;

/// <summary>Something that happened while a state settled.</summary>
internal abstract record Happening
{
    private Happening()
    {
    }

    public sealed record FuseOpened(string Part, bool IsBreaker, double Amps, double RatingAmps) : Happening;

    public sealed record OutputTripped(string Box, string Terminal, string Output, double Amps, double LimitAmps) : Happening;

    public sealed record TotalTripped(string Box, double Amps, double LimitAmps) : Happening;

    /// <summary>A box lost what it remembers; <paramref name="Lamps"/>: cold lamps that pulled its supply down, if any.</summary>
    public sealed record Reset(string Box, double Volts, ImmutableArray<string> Lamps) : Happening
    {
        public string Again => Lamps.IsEmpty
            ? $"{Box} resets again and again: its supply gives way each time it switches on"
            : $"{Box} resets again and again: the supply is too small for {string.Join(" and ", Lamps)}";
    }

    public sealed record RelayMoved(string Part, bool PullsIn) : Happening;

    public sealed record Undecided(string Box, string Input, double Volts, double LowVolts, double HighVolts) : Happening;

    public sealed record FollowsBlinking(string Box, string Input) : Happening;

    public sealed record GoesRound(string Outputs) : Happening;

    /// <summary>Whether words tell that cold lamps pulled the supply of that box down.</summary>
    public static bool IsReset(string words, string box) => words.StartsWith($"{box} reset", StringComparison.Ordinal);

    /// <summary>Whether words tell that the outputs of that box together passed its limit.</summary>
    public static bool IsTotalTrip(string words, string box) => words.StartsWith($"{box} switched everything off", StringComparison.Ordinal);

    /// <summary>In words.</summary>
    public sealed override string ToString() => this switch
    {
        FuseOpened { IsBreaker: true } e => $"{e.Part} opened: {new Current(e.Amps)} through a {new Current(e.RatingAmps)} breaker",
        FuseOpened e => $"{e.Part} blew: {new Current(e.Amps)} through a {new Current(e.RatingAmps)} fuse",
        OutputTripped e => $"{e.Box} switched {e.Terminal} ({e.Output}) off: {new Current(e.Amps)}, more than its {new Current(e.LimitAmps)}",
        TotalTripped e => $"{e.Box} switched everything off: {new Current(e.Amps)} together, more than its {new Current(e.LimitAmps)}",
        Reset { Lamps.IsEmpty: true } e => $"{e.Box} lost its supply: {new Voltage(e.Volts)}",
        Reset e => $"{e.Box} reset: its supply fell to {new Voltage(e.Volts)} while {string.Join(" and ", e.Lamps)} warmed up",
        RelayMoved e => e.PullsIn ? $"{e.Part} clicks: it pulls in" : $"{e.Part} clicks: it lets go",
        Undecided e => $"{e.Box} cannot tell whether {e.Input} is on: {new Voltage(e.Volts)} there, between its {new Voltage(e.LowVolts)} and {new Voltage(e.HighVolts)}",
        FollowsBlinking e => $"{e.Box} sees {e.Input} go on and off with what blinks",
        GoesRound e => $"{e.Outputs} switches on and off by itself",
        _ => "",
    };
}
