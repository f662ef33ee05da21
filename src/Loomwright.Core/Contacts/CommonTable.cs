using System.Collections.Immutable;

namespace Loomwright.Contacts;

/// <summary>A contact table that switches and locks of this size often have (common practice, no source).</summary>
/// <param name="Name">What such a switch is.</param>
/// <param name="Positions">What is joined in each position in the order of turning, in one order of the leads.</param>
public sealed record CommonTable(string Name, ImmutableArray<Joined> Positions)
{
    /// <summary>How many leads it has.</summary>
    public int Leads => Positions[0].Groups.Length;

    /// <summary>All that are known; which lead is which is not part of a table.</summary>
    public static ImmutableArray<CommonTable> All { get; } =
    [
        Of("a plain contact", "ab", "aa"),
        Of("a changeover", "aab", "aba"),
        Of("a contact with a lead left over", "abc", "aab"),
        Of("one feed to two leads", "abc", "aaa"),
        Of("a lock: one circuit, then everything", "abc", "aab", "aaa"),
        Of("left, off, right", "aab", "abc", "aba"),
        Of("off, then one lead or the other", "abc", "aab", "aba"),
        Of("a lock with park: both, then one", "abc", "aaa", "aab"),
        Of("two separate contacts", "abcd", "aabb"),
        Of("one contact closed at rest, one when turned", "aabc", "abcc"),
        Of("one feed to two leads, one lead left over", "abcd", "aaab"),
        Of("one feed to three leads", "abcd", "aaaa"),
        Of("a lock of two circuits, park across them", "abcd", "aabb", "abca"),
        Of("a lock of two circuits, park on one", "abcd", "aabb", "aabc"),
        Of("a lock: one circuit, then both", "abcd", "aabc", "aabb"),
        Of("a lock: one circuit, then everything, four leads", "abcd", "aabc", "aaaa"),
        Of("a lock: one feed to two, park to the third", "abcd", "aaab", "abca"),
    ];

    /// <summary>The table with its leads in every order, each different one with the share of orders that give it.</summary>
    internal ImmutableArray<(ImmutableArray<Joined> Table, double Share)> InEveryOrder()
    {
        var orders = Orders([.. Enumerable.Range(0, Leads)]).ToList();
        return [.. orders
            .Select(order => Positions.Select(p => Joined.Of(order.Select(lead => (int)p.Groups[lead]))).ToImmutableArray())
            .GroupBy(TableText)
            .Select(g => (g.First(), (double)g.Count() / orders.Count))];
    }

    /// <summary>A table as text, so that equal ones are equal.</summary>
    internal static string TableText(ImmutableArray<Joined> table) => string.Join('/', table.Select(p => p.Groups));

    private static CommonTable Of(string name, params string[] positions) => new(name, [.. positions.Select(p => new Joined(p))]);

    private static IEnumerable<ImmutableArray<int>> Orders(ImmutableArray<int> leads) =>
        leads.Length == 1 ? [leads] : leads.SelectMany(first => Orders(leads.Remove(first)).Select(rest => rest.Insert(0, first)));
}
