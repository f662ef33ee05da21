using System.Collections.Immutable;
using Loomwright.Quantities;

namespace Loomwright.Sizing;

/// <summary>
/// One published rule of what a wire may carry and which protector may stand before it. The owner chooses one by name;
/// published rules differ by a factor of five for the same wire, so whoever quotes a figure names the rule.
/// </summary>
/// <param name="Name">As the owner writes it under <c>ampacity rule</c>.</param>
/// <param name="Source">Where it is published.</param>
/// <param name="Basis">How far its figures were checked.</param>
/// <param name="Holds">What it was made for, in words.</param>
public sealed record AmpacityRule(string Name, string Source, string Basis, string Holds)
{
    /// <summary>Largest protector over what the wire carries.</summary>
    internal double ProtectorShare { get; init; } = 1;

    /// <summary>The figures are protectors, not what the wire carries.</summary>
    internal bool ListsProtectors { get; init; }

    internal ImmutableArray<AmpacityColumn> Columns { get; init; } = [];

    /// <summary>From this many loaded wires on, this share; empty where the figures are for a bundle already or the rule says nothing.</summary>
    internal ImmutableArray<(int From, double Share)> Bundles { get; init; } = [];

    // A gauge stands for a size up to one even gauge thicker; nominal areas this near count as one size (20 AWG and 0.5 mm²).
    private const double ThinnestStandIn = 0.6;
    private const double SameShare = 1.05;

    /// <summary>What it allows a size; null when it lists neither the size nor a next thinner one near it, or no insulation as cool as this.</summary>
    public Allowance? For(CrossSection size, Surroundings around)
    {
        var column = Columns.LastOrDefault(c => c.ClassCelsius is null || c.ClassCelsius <= around.Insulation.Celsius);
        if (column is null || column.Rows[^1].SquareMillimetres * SameShare < size.SquareMillimetres * ThinnestStandIn
            || column.Rows.LastOrDefault(r => r.SquareMillimetres <= size.SquareMillimetres * SameShare) is not { } row
            || row.SquareMillimetres < size.SquareMillimetres * ThinnestStandIn)
        {
            return null;
        }

        var bundled = row.Amps * BundleShare(around.Bundle);
        var amps = bundled * column.AmbientShare(around.Ambient.Celsius);
        return new Allowance(this, row.Name, ListsProtectors ? null : new Current(amps), new Current(amps * ProtectorShare), new Current((row.BreakerAmps ?? amps) * ProtectorShare))
        {
            FromMemory = row.FromMemory,
            Heated = column is { ClassCelsius: { } hot, BaseCelsius: { } air } && !ListsProtectors ? (hot - air, bundled) : null,
        };
    }

    /// <summary>The share of its figures left for a wire among this many loaded ones.</summary>
    internal double BundleShare(int wires) => Bundles.LastOrDefault(b => b.From <= wires) is { Share: > 0 } step ? step.Share : 1;
}

/// <summary>What a rule allows one size.</summary>
/// <param name="SizeTaken">The row that was read: the size, or the next thinner one listed.</param>
/// <param name="Carries">For long; null where the rule lists protectors only.</param>
/// <param name="Fuse">The largest fuse before it.</param>
/// <param name="Breaker">The largest breaker before it.</param>
public sealed record Allowance(AmpacityRule Rule, string SizeTaken, Current? Carries, Current Fuse, Current Breaker)
{
    /// <summary>The row was not checked against a copy of its source.</summary>
    public bool FromMemory { get; init; }

    /// <summary>How many kelvin the conductor gains at how many amps, where the rule says so.</summary>
    internal (double Kelvin, double Amps)? Heated { get; init; }
}

/// <summary>A rule's figures for one class of insulation.</summary>
/// <param name="ClassCelsius">The insulation it asks for; null where it names none.</param>
/// <param name="BaseCelsius">The air the figures are for; null where it names none.</param>
/// <param name="Rows">From thin to thick.</param>
internal sealed record AmpacityColumn(double? ClassCelsius, double? BaseCelsius, ImmutableArray<AmpacityRow> Rows)
{
    /// <summary>√((class − air)/(class − base)): the same heat given off at the same conductor. Never above 1: no rule here gives more than its table in cooler air.</summary>
    public double AmbientShare(double celsius) =>
        ClassCelsius is { } hot && BaseCelsius is { } air ? Math.Sqrt(Math.Clamp((hot - celsius) / (hot - air), 0, 1)) : 1;
}

/// <summary>One row: a size and amps.</summary>
internal sealed record AmpacityRow(string Name, double SquareMillimetres, double Amps, double? BreakerAmps, bool FromMemory);
