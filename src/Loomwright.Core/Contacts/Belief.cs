using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace Loomwright.Contacts;

/// <summary>
/// How likely each contact table is after the readings: the common ones of this size share 0.9, in every order of leads alike,
/// all others share the rest alike. Without a common table of the size all are alike.
/// </summary>
internal sealed class Belief
{
    private const double OfCommonOnes = 0.9;

    // A turn of the switch is one more thing to do, and to do wrong.
    private const double ShareKeptByTurning = 0.6;

    private readonly ImmutableArray<PositionRead> _positions;
    private readonly double _eachOther;

    public Belief(int leads, ImmutableArray<PositionRead> positions)
    {
        _positions = positions;
        var common = Sized.GetOrAdd((leads, positions.Length), size => CommonOf(size.Leads, size.Positions));
        var others = Math.Pow(Joined.All(leads).Length, positions.Length) - common.Length;
        _eachOther = (common.IsEmpty ? 1 : 1 - OfCommonOnes) / Math.Max(others, 1);
        Common = [.. common.Where(w => w.Table.Zip(positions).All(p => p.Second.Possible.Contains(p.First))).OrderByDescending(w => w.Weight)];
        Other = _eachOther * (positions.Aggregate(1.0, (n, p) => n * p.Possible.Length) - Common.Length);
    }

    /// <summary>The common tables that are still possible, the likeliest first; not divided by <see cref="Total"/>.</summary>
    public ImmutableArray<Weighed> Common { get; }

    /// <summary>All other tables that are still possible, together.</summary>
    public double Other { get; }

    /// <summary>What all that is possible weighs.</summary>
    public double Total => Common.Sum(c => c.Weight) + Other;

    /// <summary>The pair whose reading tells most about the table, in the position it stands in if that is nearly as good; null when nothing is left to tell.</summary>
    /// <param name="at">The position the switch stands in.</param>
    public (int Position, int One, int Other)? Next(int at)
    {
        (int, int, int)? best = null;
        var most = 0.0;
        foreach (var position in Enumerable.Range(0, _positions.Length).OrderBy(p => p == at ? -1 : p))
        {
            var leads = _positions[position].Possible[0].Groups.Length;
            for (var one = 0; one < leads; one++)
            {
                for (var other = one + 1; other < leads; other++)
                {
                    var told = Bits(JoinedShare(position, one, other)) * (position == at ? 1 : ShareKeptByTurning);
                    if (_positions[position].Joins(one, other) is null && told > most + 1e-12)
                    {
                        (best, most) = ((position, one, other), told);
                    }
                }
            }
        }

        return best;
    }

    /// <summary>
    /// The next position with the clips on one pair and the switch turned: those of the pair they are on first, the nearest
    /// before others; then the pair that tells most over all its positions. Null when nothing is left to tell.
    /// </summary>
    /// <param name="at">The position the switch stands in.</param>
    /// <param name="on">The pair the clips are on; null before the first.</param>
    public (int Position, int One, int Other)? NextClipped(int at, (int One, int Other)? on)
    {
        if (on is { } pair && Untold(pair) is [_, ..] left)
        {
            return (left.MinBy(p => Math.Abs(p - at)), pair.One, pair.Other);
        }

        var leads = _positions[0].Possible[0].Groups.Length;
        var pairs = Enumerable.Range(0, leads).SelectMany(one => Enumerable.Range(one + 1, leads - one - 1).Select(other => (One: one, Other: other))).Where(p => Untold(p).Count > 0).ToList();
        if (pairs.Count == 0)
        {
            return null;
        }

        var best = pairs.MaxBy(p => Math.Round(Untold(p).Sum(u => Bits(JoinedShare(u, p.One, p.Other))), 12));
        return (Untold(best).MinBy(p => Math.Abs(p - at)), best.One, best.Other);
    }

    private List<int> Untold((int One, int Other) pair) => [.. Enumerable.Range(0, _positions.Length).Where(p => _positions[p].Joins(pair.One, pair.Other) is null)];

    private double JoinedShare(int position, int one, int other)
    {
        var common = Common.Where(c => c.Table[position].Joins(one, other)).ToList();
        var possible = _positions[position].Possible;
        var others = (_positions.Aggregate(1.0, (n, p) => n * p.Possible.Length) * possible.Count(j => j.Joins(one, other)) / possible.Length) - common.Count;
        return (common.Sum(c => c.Weight) + (_eachOther * others)) / Total;
    }

    // What a question answered "joined" with this chance tells.
    private static double Bits(double chance) => chance is <= 0 or >= 1 ? 0 : -((chance * Math.Log2(chance)) + ((1 - chance) * Math.Log2(1 - chance)));

    private static readonly ConcurrentDictionary<(int Leads, int Positions), ImmutableArray<Weighed>> Sized = new();

    private static ImmutableArray<Weighed> CommonOf(int leads, int positions)
    {
        ImmutableArray<CommonTable> sized = [.. CommonTable.All.Where(t => t.Leads == leads && t.Positions.Length == positions)];
        return [.. sized
            .SelectMany(t => t.InEveryOrder().Select(o => new Weighed(t.Name, o.Table, OfCommonOnes * o.Share / sized.Length)))
            .GroupBy(w => CommonTable.TableText(w.Table))
            .Select(g => g.First() with { Weight = g.Sum(w => w.Weight) })];
    }

    /// <summary>A table with its weight.</summary>
    internal sealed record Weighed(string Name, ImmutableArray<Joined> Table, double Weight);
}
