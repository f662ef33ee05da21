using System.Collections.Immutable;
using Loomwright.Diagnosis;

namespace Loomwright.Tests.Diagnosis;

/// <summary>Many played searches, counted.</summary>
internal sealed record SearchCounts(string Bike, ImmutableArray<Searches.Played> Played)
{
    /// <summary>Counts them.</summary>
    public static SearchCounts Of(string bike, ImmutableArray<Searches.Played> played) => new(bike, played);

    /// <summary>Those whose true repair stands first.</summary>
    public int First => Played.Count(p => p.First);

    /// <summary>Those whose true repair is one of no more than three that cannot be told apart, and not the first.</summary>
    public int InGroup => Played.Count(p => !p.First && p.InGroup);

    /// <summary>Those that ended with several that cannot be told apart.</summary>
    public int Untold => Played.Count(p => p.State == Search.CannotTellApart);

    /// <summary>Lower end of the share with the true repair first or in such a group, 95 %, one-sided (Wilson).</summary>
    public double LowerBound => Lower(First + InGroup, Played.Length);

    /// <summary>Mean of what was said of the first, 0…1.</summary>
    public double Stated => Played.Average(p => p.Share);

    /// <summary>The counts as lines.</summary>
    public string ToText() => FormattableString.Invariant($"""
        {Bike}: {Played.Length} searches
        true repair first: {First}
        among no more than three that cannot be told apart, not first: {InGroup}
        ended with what cannot be told apart: {Untold}
        among the first three in the list: {Played.Count(p => p.Place is > 0 and <= 3)}
        said not to fit: {Played.Count(p => p.State == Search.DoesNotFit)}
        lower 95 % bound of first or in such a group: {LowerBound * 100:0.0} %
        stated for the first on average: {Stated * 100:0.0} %, true of {First * 100.0 / Played.Length:0.0} %
        questions on average: {Played.Average(p => p.Questions):0.00}, minutes: {Played.Average(p => p.Minutes):0.00}

        not first:
        {string.Join('\n', Played.Where(p => !p.First).GroupBy(p => $"{p.Truth} | said: {p.Said} | {p.State}{(p.InGroup ? ", in the group" : "")}").OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Select(g => FormattableString.Invariant($"{g.Count()} x {g.Key}")))}

        """);

    private static double Lower(int good, int all)
    {
        const double z = 1.645;
        var share = (double)good / all;
        return (share + (z * z / (2 * all)) - (z * Math.Sqrt((share * (1 - share) / all) + (z * z / (4.0 * all * all))))) / (1 + (z * z / all));
    }
}
