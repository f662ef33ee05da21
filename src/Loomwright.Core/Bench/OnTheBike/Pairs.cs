using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Bench.OnTheBike;

/// <summary>Two functions at once that share a wire: a ground or feed that cannot carry both shows only so.</summary>
internal sealed class Pairs(Everything bike)
{
    public Stage? Stage(int number)
    {
        var steps = new Steps(number);
        var tour = new Tour(bike, steps, bike.Aside.Quiet);
        tour.PowerUp();
        var any = false;
        foreach (var (a, b, shared) in Chosen())
        {
            any = true;
            foreach (var operation in a.Do.Concat(b.Do).Distinct().Where(o => !bike.Key.Contains(o)).OrderBy(o => bike.Survey.IsMomentary(o.Control)))
            {
                tour.Do(operation);
            }

            var wire = bike.Loom.Wire(shared)!;
            var back = bike.Paths.Return;
            if (tour.Read(wire.From, wire.To) is { } lost)
            {
                var (red, black) = lost.Volts >= 0 ? (wire.From, wire.To) : (wire.To, wire.From);
                tour.Volts($"{a.Name} and {b.Name} together share {shared}. Measure along it", red, black, "volts lost", Bands.OfDrop(new Voltage(Math.Abs(lost.Volts))));
            }

            tour.BackToKey();
        }

        tour.PowerDown();
        return any ? bike.Stage(number, "two at a time", "A ground that two functions share shows a poor joint only while both are on.", steps, tour.Frames, bike.Aside.Quiet) : null;
    }

    // Greedy: the pair that shares most wires no pair has covered yet; ties by file order.
    private List<(Line A, Line B, string Shared)> Chosen()
    {
        const int MostPairs = 8;
        var lines = bike.Survey.Loads.Where(l => !l.Cranks && !bike.Aside.Has(l) && l.Do.Any(o => !bike.Key.Contains(o))).DistinctBy(l => string.Join(", ", l.Do)).ToList();
        var pairs = (from i in Enumerable.Range(0, lines.Count)
                     from j in Enumerable.Range(i + 1, lines.Count - i - 1)
                     where CanBoth(lines[i], lines[j])
                     select (A: lines[i], B: lines[j], Wires: lines[i].Reach.Wires.Intersect(lines[j].Reach.Wires, Names.Comparer).ToList())).ToList();
        var covered = new HashSet<string>(Names.Comparer);
        var chosen = new List<(Line, Line, string)>();
        while (chosen.Count < MostPairs && pairs.Count > 0)
        {
            var best = pairs.MaxBy(p => p.Wires.Count(w => !covered.Contains(w)));
            if (best.Wires.All(covered.Contains))
            {
                break;
            }

            chosen.Add((best.A, best.B, best.Wires.First(w => !covered.Contains(w))));
            covered.UnionWith(best.Wires);
        }

        return chosen;
    }

    // Two hands, and no switch in two positions.
    private bool CanBoth(Line a, Line b) =>
        a.Do.Concat(b.Do).Distinct().Count(o => bike.Survey.IsMomentary(o.Control)) <= 2
        && a.Do.All(x => b.Do.All(y => !Names.Same(x.Control, y.Control) || x == y));
}
