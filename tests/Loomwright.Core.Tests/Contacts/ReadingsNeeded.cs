using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Contacts;

namespace Loomwright.Tests.Contacts;

/// <summary>How many readings a table costs, over the common ones in every order of leads (0.9) and all others of the size (0.1).</summary>
internal sealed record ReadingsNeeded(int Leads, int Positions, double Average, int Worst, double TakenForAnother, double Measured, int MostMeasured)
{
    /// <summary>No order of beep and nothing tells all tables apart in fewer on average: the bits of their weights.</summary>
    public double Bits { get; init; }

    /// <summary>The same for the worst: so many readings tell two to their power.</summary>
    public int LeastWorst { get; init; }

    /// <summary>How often the meter is put on a pair until the table is named; it stays on while the switch is turned.</summary>
    public double Put { get; init; }

    public int MostPut { get; init; }

    public static ReadingsNeeded Of(int leads, int positions)
    {
        var common = CommonTable.All.Where(t => t.Leads == leads && t.Positions.Length == positions).ToList();
        var weight = common.SelectMany(t => t.InEveryOrder().Select(o => (Text: CommonTable.TableText(o.Table), Share: 0.9 * o.Share / common.Count)))
            .GroupBy(w => w.Text).ToDictionary(g => g.Key, g => g.Sum(w => w.Share));
        var tables = Tables(leads, positions).ToList();
        var other = 0.1 / (tables.Count - weight.Count);
        var (average, worst, taken, measured, most, bits, put, mostPut) = (0.0, 0, 0.0, 0.0, 0, 0.0, 0.0, 0);
        foreach (var table in tables)
        {
            var share = weight.GetValueOrDefault(CommonTable.TableText(table), other);
            var (likely, named, all) = Read(leads, table, isClipped: false, _ => 1);
            var (puts, _, _) = Read(leads, table, isClipped: true, next => next.Stays ? 0 : 1);
            bits -= share * Math.Log2(share);
            put += share * puts;
            mostPut = Math.Max(mostPut, puts);
            average += share * likely;
            worst = Math.Max(worst, likely);
            taken += named ? 0 : share;
            measured += share * all;
            most = Math.Max(most, all);
        }

        return new(leads, positions, average, worst, taken, measured, most) { Bits = bits, LeastWorst = (int)Math.Ceiling(Math.Log2(tables.Count)), Put = put, MostPut = mostPut };
    }

    // Answered truly until it is named, and on until all is measured.
    private static (int Likely, bool Named, int Measured) Read(int leads, ImmutableArray<Joined> table, bool isClipped, Func<Question, int> costs)
    {
        var (readings, cost) = (ImmutableArray<Reading>.Empty, 0);
        (int Readings, bool Right)? named = null;
        while (true)
        {
            var read = UnmarkedSwitch.Of([.. Names(leads)], [.. Names(table.Length)], readings, isClipped);
            if (named is null && read.Table is { } found)
            {
                named = (cost, found.SequenceEqual(table));
            }

            if (read.Next is not { } next)
            {
                Assert.Equal(Known.Measured, read.State);
                Assert.Equal(table, read.Table!.Value);
                return (named!.Value.Readings, named.Value.Right, cost);
            }

            cost += costs(next);
            readings = readings.Add(new Reading(next.Position, next.One, next.Other, table[next.Position].Joins(next.One, next.Other) ? Heard.Beep : Heard.Nothing));
        }
    }

    private static IEnumerable<string> Names(int count) => Enumerable.Range(1, count).Select(n => n.ToString(CultureInfo.InvariantCulture));

    private static IEnumerable<ImmutableArray<Joined>> Tables(int leads, int positions) =>
        Enumerable.Range(0, positions).Aggregate<int, IEnumerable<ImmutableArray<Joined>>>([[]], (made, _) => made.SelectMany(t => Joined.All(leads).Select(j => t.Add(j))));
}
