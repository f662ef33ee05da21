using System.Collections.Immutable;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Simulation;
using Evidence = Loomwright.Diagnosis.Evidence;

namespace Loomwright.Web.Cause;

/// <summary>What a person notices first.</summary>
/// <param name="Words">On its button.</param>
/// <param name="Ask">What has to be told of it, in a line.</param>
/// <param name="Is">Whether something told of one thing is it: the thing, how it should be, how it was told.</param>
public sealed record Symptom(string Words, string Ask, Func<Observable, byte, byte, bool> Is)
{
    private static readonly Symptom Nothing = new("Nothing at all", "Say what you looked at: set its lines to dark, silent or off.", (what, should, told) => should != told && !IsOn(what, told));

    private static readonly Symptom StaysDark = new("One lamp stays dark", "Say which lamp stays dark: set its line to dark.", (what, should, told) => what.Sense == Sense.Sight && IsOn(what, should) && !IsOn(what, told));

    private static readonly Symptom Fuse = new("A fuse blew", "Say which fuse blew: set its line to blown.", (what, _, told) => what.Sense == Sense.Fuse && (FuseState)told == FuseState.Blown);

    /// <summary>Nothing shows, so that one tap tells everything dark and silent.</summary>
    public bool AllDark => this == Nothing;

    /// <summary>It is about one lamp that should shine, so that the lamp is named first.</summary>
    public bool IsOfALamp => this == StaysDark;

    /// <summary>A fuse blew, so that its caution is shown.</summary>
    public bool Blown => this == Fuse;

    /// <summary>The six, as they stand on the page.</summary>
    public static ImmutableArray<Symptom> All { get; } =
    [
        Nothing,
        StaysDark,
        new("The wrong lamp lights", "Say which lamp lights that should not: set its line to what it does.", (what, should, told) => what.Sense == Sense.Sight && !IsOn(what, should) && IsOn(what, told)),
        new("It is dim", "Say which lamp is dim: set its line to dim.", (what, _, told) => what.Sense == Sense.Sight && (Symbol)told == Symbol.Dim),
        new("It blinks wrongly", "Say which lamp blinks wrongly: set its line to what it does.", (what, should, told) => what.Sense is Sense.Sight or Sense.BoxLight && should != told),
        Fuse,
    ];

    /// <summary>Every lamp that shines in some state of a bike with nothing wrong, with the first state in which it does, by their places.</summary>
    public static ImmutableArray<(int Lamp, int Done)> Lamps(TroubleTable table) =>
    [
        .. from lamp in Enumerable.Range(0, table.Table.Observables.Length)
           where table.Table.Observables[lamp] is { Sense: Sense.Sight, LightPower: not null }
           let lit = Enumerable.Range(0, table.Table.Stimuli.Length).Where(s => table.Singles[0].Looks[s].Signs is { IsEmpty: false } signs && IsOn(table.Table.Observables[lamp], signs[lamp])).ToList()
           where lit.Count > 0
           select (lamp, lit.OrderBy(s => table.Table.Stimuli[s].Operations.Length).First()),
    ];

    /// <summary>What is missing for it to be told, in a line; null when something told is it.</summary>
    public string? Untold(TroubleTable table, Evidence.Seen seen)
    {
        var healthy = table.Singles[0].Looks[seen.Stimulus].Signs;
        return seen.Signs.Any(s => Is(table.Table.Observables[s.Observable], healthy[s.Observable], s.Sign)) ? null
            : seen.Signs.All(s => healthy[s.Observable] == s.Sign) ? $"{Ask} All you set is as it should be with {table.Table.Stimuli[seen.Stimulus].Name}: choose above what you did when it was wrong."
            : Ask;
    }

    private static bool IsOn(Observable what, byte sign) => what.Sense switch
    {
        Sense.Fuse => false,
        Sense.Relay => sign != 0,
        _ => (Symbol)sign is not (Symbol.Dark or Symbol.Silent or Symbol.Rests),
    };
}
