using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace Loomwright.Contacts;

/// <summary>
/// Which leads a switch joins in one position. Metal joins in groups: when a reaches b and b reaches c, a reaches c.
/// </summary>
/// <param name="Groups">A letter for each lead in order, the first always <c>a</c>; leads of one letter are joined: <c>aab</c> joins the first two of three.</param>
public readonly record struct Joined(string Groups)
{
    /// <summary>Whether metal joins the two leads, counted from 0.</summary>
    public bool Joins(int one, int other) => Groups[one] == Groups[other];

    /// <summary>As few pairs as say the same: each lead with the one before it in its group.</summary>
    public ImmutableArray<(int One, int Other)> Pairs
    {
        get
        {
            var groups = Groups;
            return [.. Enumerable.Range(0, groups.Length).Select(i => (One: groups.LastIndexOf(groups[i], Math.Max(i - 1, 0), i), Other: i)).Where(p => p.One >= 0)];
        }
    }

    /// <summary>Groups named in any letters, written in the letters of the first in each.</summary>
    internal static Joined Of(IEnumerable<int> groups)
    {
        var letters = new Dictionary<int, char>();
        return new(string.Concat(groups.Select(g => letters.TryGetValue(g, out var known) ? known : letters[g] = (char)('a' + letters.Count))));
    }

    /// <summary>Every way <paramref name="leads"/> leads can be joined: 2, 5, 15, 52, 203, 877, 4140 ways for 2 to 8.</summary>
    internal static ImmutableArray<Joined> All(int leads) => Ways.GetOrAdd(leads, Listed);

    private static readonly ConcurrentDictionary<int, ImmutableArray<Joined>> Ways = new();

    private static ImmutableArray<Joined> Listed(int leads)
    {
        IEnumerable<string> ways = ["a"];
        for (var lead = 1; lead < leads; lead++)
        {
            ways = ways.SelectMany(w => Enumerable.Range('a', w.Max() - 'a' + 2).Select(next => w + (char)next));
        }

        return [.. ways.Select(w => new Joined(w))];
    }
}
