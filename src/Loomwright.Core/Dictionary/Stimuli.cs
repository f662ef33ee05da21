using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Dictionary;

/// <summary>What is worth doing on a whole bike to see what is wrong with it (docs/dictionary.md).</summary>
public static class Stimuli
{
    /// <summary>No more than this; the pairs that carry least are left out.</summary>
    public const int Most = 60;

    private const int MostHeld = 2;

    /// <summary>
    /// Nothing done; each control that stays where put alone; each function by each of its ways, and what goes on after letting
    /// go; each other control where functions work; functions in pairs, those that carry most first.
    /// </summary>
    public static ImmutableArray<Stimulus> Usual(Loom loom)
    {
        var wiring = Wiring.Of(loom);
        var ways = loom.Functions.SelectMany(f => Ways(wiring, f)).ToList();
        var found = new List<ImmutableArray<(int Control, int Position)>> { ImmutableArray<(int, int)>.Empty };
        found.AddRange(Alone(wiring).Where(m => !wiring.Controls[m[0].Control].Momentary));
        found.AddRange(ways.Select(w => w.Moves));
        var context = Context(wiring, ways);
        found.AddRange(Alone(wiring).Where(m => !context.Any(c => c.Control == m[0].Control)).Select(m => Ordered(wiring, [.. context, .. m])));
        var letGo = ways.Where(w => w.Moves.Any(m => wiring.Controls[m.Control].Momentary)).Select(w => LetGo(wiring, w.Moves, w.Wait));
        var pairs = Pairs(wiring, ways);
        return EndingApart(wiring, [.. found.Select(m => Of(wiring, m, Waits(ways, m))).Concat(letGo).Concat(pairs)]);
    }

    // Two that end alike in the healthy loom are one.
    private static ImmutableArray<Stimulus> EndingApart(Wiring wiring, ImmutableArray<Stimulus> all)
    {
        var tree = new ScriptTree(wiring, all);
        var settler = new Settler(wiring);
        var settled = new Settled?[tree.Nodes.Count];
        return [.. Enumerable.Range(0, all.Length).DistinctBy(s => At(tree.Ends[s]).State).Take(Most).Select(s => all[s])];

        Settled At(int node) => settled[node] ??= node == 0 ? settler.Settle(wiring.Start()) : Player.After(settler, At(tree.Nodes[node].Parent), tree.Nodes[node]);
    }

    private sealed record Way(Function Function, ImmutableArray<(int Control, int Position)> Moves, TimeSpan Wait);

    private static TimeSpan Waits(List<Way> ways, ImmutableArray<(int Control, int Position)> moves) =>
        ways.FirstOrDefault(w => w.Moves.SequenceEqual(moves))?.Wait ?? TimeSpan.Zero;

    private static IEnumerable<ImmutableArray<(int Control, int Position)>> Alone(Wiring wiring) =>
        from c in Enumerable.Range(0, wiring.Controls.Length)
        from p in Enumerable.Range(0, wiring.Controls[c].Positions.Length)
        where p != Rest(wiring, c)
        select ImmutableArray.Create((c, p));

    // The fewest moves that make it work, then for each other control it names the fewest that need that one. One of them
    // may be no help: it is what takes the first way away (in gear it starts only with the clutch).
    private static IEnumerable<Way> Ways(Wiring wiring, Function function)
    {
        var used = new HashSet<int>();
        ImmutableArray<(int Control, int Position)>? first = null;
        foreach (var setting in Operated.Settings(wiring, function.Works))
        {
            if (setting.All(m => used.Contains(m.Control)) && used.Count > 0)
            {
                continue;
            }

            if (setting.Count(m => wiring.Controls[m.Control].Momentary) <= MostHeld
                && Operated.WaitsToWork(wiring, function.Works, setting) is { } wait
                && setting.Where(m => Operated.WaitsToWork(wiring, function.Works, setting.Remove(m)) is not null).ToList() is var idle
                && (idle.Count == 0 || (idle is [var hinders] && first is { } easiest && Operated.WaitsToWork(wiring, function.Works, easiest.Add(hinders)) is null)))
            {
                first ??= setting;
                used.UnionWith(setting.Select(m => m.Control));
                yield return new Way(function, Ordered(wiring, setting), wait);
            }
        }
    }

    // How what stays put stands in most functions.
    private static ImmutableArray<(int Control, int Position)> Context(Wiring wiring, List<Way> ways) =>
    [
        .. ways.SelectMany(w => w.Moves).Where(m => !wiring.Controls[m.Control].Momentary)
            .GroupBy(m => m).OrderByDescending(g => g.Count()).ThenBy(g => g.Key.Control).Take(1).Select(g => g.Key),
    ];

    private static Stimulus LetGo(Wiring wiring, ImmutableArray<(int Control, int Position)> moves, TimeSpan wait)
    {
        var done = Of(wiring, moves, wait).Operations;
        return Stimulus.Of([.. done, .. moves.Reverse().Where(m => wiring.Controls[m.Control].Momentary).Select(m => Set(wiring, m.Control, Rest(wiring, m.Control)))]);
    }

    private static IEnumerable<Stimulus> Pairs(Wiring wiring, List<Way> ways)
    {
        var first = ways.DistinctBy(w => w.Function.Name).ToList();
        var amps = first.ToDictionary(w => w, w => Operated.For(wiring, w.Function.Works) is { Pictures: [var on, ..] } ? wiring.Supplies.Sum(s => -on.Amps[s]) : 0);
        var pairs = from a in Enumerable.Range(0, first.Count)
                    from b in Enumerable.Range(a + 1, first.Count - a - 1)
                    let one = first[a]
                    let other = first[b]
                    let both = one.Moves.Union(other.Moves).ToImmutableArray()
                    where both.DistinctBy(m => m.Control).Count() == both.Length
                    where both.Length > Math.Max(one.Moves.Length, other.Moves.Length)
                    where both.Count(m => wiring.Controls[m.Control].Momentary) <= MostHeld
                    orderby amps[one] + amps[other] descending, a, b
                    select Of(wiring, Ordered(wiring, both), one.Wait > other.Wait ? one.Wait : other.Wait);
        return pairs;
    }

    private static Stimulus Of(Wiring wiring, ImmutableArray<(int Control, int Position)> moves, TimeSpan wait)
    {
        ImmutableArray<Operation> operations = [.. moves.Select(Operation (m) => Set(wiring, m.Control, m.Position))];
        return Stimulus.Of(wait > TimeSpan.Zero ? operations.Add(new Operation.Wait(wait)) : operations);
    }

    // What stays put goes first, as a hand would do it: the key before the button.
    private static ImmutableArray<(int Control, int Position)> Ordered(Wiring wiring, IEnumerable<(int Control, int Position)> moves) =>
        [.. moves.Distinct().OrderBy(m => wiring.Controls[m.Control].Momentary).ThenBy(m => m.Control)];

    private static Operation.Set Set(Wiring wiring, int control, int position) => new Operation.Set(wiring.Controls[control].Name, wiring.Controls[control].Positions[position]);

    private static int Rest(Wiring wiring, int control) => Wiring.PlaceOf(wiring.Controls[control], wiring.Controls[control].Rest) ?? 0;
}
