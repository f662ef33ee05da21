using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Sizing;

/// <summary>Wires and fuses of a bike against what flows, by one rule. Computed from the design; nothing was measured.</summary>
/// <param name="Rule">The rule that was asked.</param>
/// <param name="Wires">In file order.</param>
/// <param name="Fuses">In file order.</param>
/// <param name="Circuits">Every load that took current, in the order of the file.</param>
/// <param name="EveryCombination">Whether all combinations of the controls that stay put were tried.</param>
public sealed record Sized(AmpacityRule Rule, ImmutableArray<WireSized> Wires, ImmutableArray<FuseSized> Fuses, ImmutableArray<CircuitSized> Circuits, bool EveryCombination)
{
    /// <summary>Sizes a design by a rule, or by the one it names.</summary>
    public static Sized Of(Loom loom, AmpacityRule? rule = null) => new Adviser(loom, rule ?? AmpacityRules.Of(loom.Conditions)).Answer();
}

/// <summary>One wire.</summary>
/// <param name="Most">The most it was seen to carry while no starter turns …</param>
/// <param name="When">… after these operations from rest.</param>
/// <param name="Cranking">The most while a starter turns: outside every ampacity rule, for seconds only.</param>
/// <param name="Around">What it lies in.</param>
/// <param name="Warmest">How warm its conductor gets at the first for long and then ten seconds of the second …</param>
/// <param name="HeatBy">… by whose figures.</param>
/// <param name="Guard">What stands before it, or null.</param>
/// <param name="AgainstFuse">The hottest it gets while that fuse may still be whole; null without a fuse.</param>
/// <param name="Allowed">What the rule that counts allows; null when none lists the size.</param>
/// <param name="Enough">The thinnest listed size that will do, or null when there is none.</param>
/// <param name="Reason">Why, in one sentence that names the rule.</param>
public sealed record WireSized(
    Wire Wire,
    Current Most,
    ImmutableArray<string> When,
    Current Cranking,
    Surroundings Around,
    Temperature Warmest,
    string HeatBy,
    Guard? Guard,
    FuseAgainstWire? AgainstFuse,
    Allowance? Allowed,
    CrossSection? Enough,
    string Reason)
{
    /// <summary>The largest guard the rule that counts allows, of the kind that stands before the wire; a fuse where none does. Null when no rule lists the size.</summary>
    public Current? LargestGuard => Allowed is null ? null : Guard?.Kind == GuardKind.Breaker ? Allowed.Breaker : Allowed.Fuse;

    /// <summary>Whether the wire is thinner than what will do.</summary>
    public bool IsThin => Enough is { } enough && enough.SquareMillimetres > Wire.Size.SquareMillimetres * 1.005;
}

/// <summary>One fuse or breaker.</summary>
/// <param name="Most">The most it was seen to carry.</param>
/// <param name="WeakestWire">Of the wires it guards the one that allows least; null when it guards none.</param>
/// <param name="Largest">What that wire allows at the most.</param>
/// <param name="Main">The fuse next before it, or null.</param>
/// <param name="NotAloneFrom">From this current up the one before it may open too; null when it always opens alone or stands first.</param>
/// <param name="ColdAmps">Every filament behind it switched on cold at once.</param>
/// <param name="ColdMayOpen">Whether it may open on that.</param>
public sealed record FuseSized(Guard Guard, Current Most, string? WeakestWire, Current? Largest, string? Main, Current? NotAloneFrom, Current ColdAmps, bool ColdMayOpen)
{
    /// <summary>Up to where it opens alone, in a few words; null when it stands first.</summary>
    public string? OpensAlone => Main is null ? null : NotAloneFrom is { } from ? $"not above {from.Printed}: {Main} may open too" : $"always, before {Main}";

    /// <summary>That cold lamps take more than the rating for a moment and why the fuse stands it, in a sentence; null where they take no more, or where it may open.</summary>
    public string? StandsCold => ColdMayOpen || ColdAmps.Amps <= Guard.Rating.Amps ? null
        : string.Create(CultureInfo.InvariantCulture, $"{Guard.InWords}: all lamps behind it switched on cold together draw {ColdAmps.Printed} for a moment, more than its rating. It stands that: they draw less than half of it within {Inrush.Seconds * 1000:0} ms, and at {ColdAmps.Printed} it {Opens} ({Guard.Band!.Source}).");

    private string Opens => Guard.Band!.LeastSeconds(ColdAmps.Amps / Guard.Rating.Amps) is { } least ? string.Create(CultureInfo.InvariantCulture, $"opens after {Lasting(least)} at the earliest") : "does not open at all";

    // Rounded down: a promise of the least.
    private static string Lasting(double seconds) => seconds switch
    {
        >= 3600 => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(seconds / 3600):0} h"),
        >= 60 => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(seconds / 60):0} min"),
        >= 1 => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(seconds):0} s"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(seconds * 1000):0} ms"),
    };
}

/// <summary>One load and what the wiring takes from it.</summary>
/// <param name="Load">As it is seen.</param>
/// <param name="Drop">Lost on the way there and back together, or where the limit is for one way on the worse of the two …</param>
/// <param name="Share">… as a share 0…1 of the supply's voltage.</param>
/// <param name="Limit">The limit it is held against.</param>
public sealed record CircuitSized(string Load, Current Current, Voltage Drop, double Share, DropLimit Limit)
{
    public bool IsWithin => Share <= Limit.Limit;
}
