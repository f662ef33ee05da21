using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Sizing;
using Loomwright.Verbs;

namespace Loomwright.Answers;

/// <summary>What <c>size</c> answers. Computed from the file; the bike was not measured.</summary>
public sealed class SizeAnswer(OpenedDesign design, Sized sized) : Answer("size", design, sized.EveryCombination)
{
    [Description("The rule that was asked.")]
    public RuleAnswer Rule { get; } = new(sized.Rule.Name, sized.Rule.Source, sized.Rule.Basis, sized.Rule.Holds);

    [Description("In file order.")]
    public ImmutableArray<WireSizeAnswer> Wires { get; } = [.. sized.Wires.Select(WireSizeAnswer.Of)];

    [Description("Fuses and breakers in file order.")]
    public ImmutableArray<FuseSizeAnswer> Fuses { get; } = [.. sized.Fuses.Select(FuseSizeAnswer.Of)];

    [Description("Every load that took current, those on dimmed outputs left out.")]
    public ImmutableArray<CircuitSizeAnswer> Circuits { get; } = [.. sized.Circuits.Select(CircuitSizeAnswer.Of)];
}

/// <summary>A rule of what a wire may carry.</summary>
public sealed record RuleAnswer(
    [property: Description("As written under ampacity rule.")] string Name,
    string Source,
    [property: Description("How far its figures were checked.")] string Basis,
    [property: Description("What it was made for.")] string Holds);

/// <summary>One wire.</summary>
public sealed record WireSizeAnswer(
    string Wire,
    [property: Description("Cross-section in mm².")] double Mm2,
    [property: Description("The most it was seen to carry while no starter turns.")] double Amps,
    [property: Description("The operations from rest that led to it.")] ImmutableArray<string> Steps,
    [property: Description("The most while a starter turns.")] double CrankingAmps,
    [property: Description("The air it lies in, °C.")] double AirCelsius,
    [property: Description("Its conductor at the first for long, then ten seconds of the second, °C.")] double Celsius,
    [property: Description("Whose figures tell how warm it gets.")] string HeatBy,
    [property: Description("The fuse, breaker or output before it, or null.")] string? Guard,
    double? GuardAmps,
    [property: Description("The hottest it gets while that fuse may still be whole, °C; null without a fuse.")] double? HottestCelsius,
    [property: Description("The current that does it.")] double? HottestAtAmps,
    [property: Description("The rule that counts for this size; null when none lists it.")] string? Rule,
    [property: Description("The row of it that was read.")] string? SizeTaken,
    [property: Description("What it lets the wire carry; null where it lists protectors only.")] double? CarriesAmps,
    [property: Description("The largest protector it allows, of the kind that stands before it; a fuse where none does.")] double? ProtectorAmps,
    [property: Description("The thinnest size that will do in mm², or null when there is none.")] double? EnoughMm2,
    string Reason)
{
    public static WireSizeAnswer Of(WireSized w) => new(
        w.Wire.Name,
        w.Wire.Size.SquareMillimetres,
        w.Most.Amps,
        w.When,
        w.Cranking.Amps,
        w.Around.Ambient.Celsius,
        w.Warmest.Celsius,
        w.HeatBy,
        w.Guard?.InWords,
        w.Guard?.Rating.Amps,
        w.AgainstFuse?.Hottest.Celsius,
        w.AgainstFuse?.At.Amps,
        w.Allowed?.Rule.Name,
        w.Allowed?.SizeTaken,
        w.Allowed?.Carries?.Amps,
        w.LargestGuard?.Amps,
        w.Enough?.SquareMillimetres,
        w.Reason);
}

/// <summary>One fuse or breaker.</summary>
public sealed record FuseSizeAnswer(
    string Fuse,
    [property: Description("How it is made: decides how long it stands how much.")] string Form,
    double RatingAmps,
    [property: Description("The most it was seen to carry.")] double Amps,
    [property: Description("The wire behind it that allows least, or null.")] string? WeakestWire,
    [property: Description("What that wire allows at the most.")] double? LargestAmps,
    [property: Description("The fuse next before it, or null.")] string? Main,
    [property: Description("From this current up that one may open too; null when this one always opens alone or stands first.")] double? NotAloneFromAmps,
    [property: Description("Every filament behind it switched on cold at once.")] double ColdAmps,
    [property: Description("Whether it may open on that.")] bool ColdMayOpen)
{
    public static FuseSizeAnswer Of(FuseSized f) => new(
        f.Guard.Part, f.Guard.Band!.Name, f.Guard.Rating.Amps, f.Most.Amps, f.WeakestWire, f.Largest?.Amps, f.Main, f.NotAloneFrom?.Amps, f.ColdAmps.Amps, f.ColdMayOpen);
}

/// <summary>One load and what the wiring takes from it.</summary>
public sealed record CircuitSizeAnswer(
    string Load,
    double Amps,
    [property: Description("Lost in feed and return together, or where the limit is for one way in the worse of the two.")] double DropVolts,
    [property: Description("The same as a share 0…1 of the supply's voltage.")] double DropShare,
    [property: Description("The limit it is held against, a share 0…1.")] double LimitShare,
    [property: Description("Whose limit that is.")] string LimitSource,
    [property: Description("Over what it is taken: both ways or one-way.")] string LimitSpan,
    bool Within)
{
    public static CircuitSizeAnswer Of(CircuitSized c) => new(c.Load, c.Current.Amps, c.Drop.Volts, c.Share, c.Limit.Limit, c.Limit.Source, c.Limit.Span, c.IsWithin);
}
