using System.Collections.Immutable;
using Loomwright.Findings;
using Loomwright.Fixes;

namespace Loomwright.Web.Check;

/// <summary>A finding and where in the file it points.</summary>
public sealed record Found(Finding Finding, int Line)
{
    /// <summary>What cures it; empty where none is offered.</summary>
    public ImmutableArray<Fix> Fixes { get; init; } = [];

    /// <summary>Everything told of a bike, of its file first among equals, the gravest first.</summary>
    public static IReadOnlyList<Found> Of(Bike bike) =>
    [
        .. bike.ReadingFindings.Concat(bike.Check())
            .OrderByDescending(f => f.Severity)
            .Select(f => new Found(f, bike.Text.At(bike.Place(f.Where).Start).Line) { Fixes = [.. bike.Fixes.Where(x => x.For == f)] }),
    ];
}
