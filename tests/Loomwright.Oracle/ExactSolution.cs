using Loomwright.Network;
using Loomwright.Parts;

namespace Loomwright.Oracle;

/// <summary>
/// The potentials of a network of straight branches without any rounding: nodal equations in fractions, plain
/// elimination, the node with the fewest entries first. Shares nothing with the solver.
/// </summary>
public static class ExactSolution
{
    /// <summary>Volts of every node. A part without a path to the reference rests with its lowest node at 0 V.</summary>
    /// <param name="circuit">The network.</param>
    /// <param name="lines">Each branch as a line i = (v − emf)·g + i0; ideal voltage sources are read from the circuit.</param>
    public static double[] Potentials(Circuit circuit, IReadOnlyList<Line> lines)
    {
        var (head, offset) = Join(circuit);
        var matrix = Enumerable.Range(0, circuit.NodeCount).Select(_ => new Dictionary<int, Rational>()).ToArray();
        var right = Enumerable.Repeat(Rational.Zero, circuit.NodeCount).ToArray();
        for (var b = 0; b < lines.Count; b++)
        {
            var (from, to, curve) = circuit.Branches[b];
            if (curve is FixedVoltage)
            {
                continue;
            }

            var (p, q, g) = (head[from], head[to], Rational.Of(lines[b].Siemens));
            Add(matrix[p], p, g);
            Add(matrix[q], q, g);
            Add(matrix[p], q, Rational.Zero - g);
            Add(matrix[q], p, Rational.Zero - g);
            var amps = ((offset[from] - offset[to] - Rational.Of(lines[b].EmfVolts)) * g) + Rational.Of(lines[b].Amps);
            right[p] -= amps;
            right[q] += amps;
        }

        var volts = Eliminate(matrix, right, head);
        var potentials = Enumerable.Range(0, circuit.NodeCount).Select(n => volts[head[n]] + offset[n]).ToArray();
        var island = Islands(circuit, lines);
        return [.. potentials.Select((v, n) => (v - potentials[island[n]]).ToDouble())];
    }

    private static Rational[] Eliminate(Dictionary<int, Rational>[] matrix, Rational[] right, int[] head)
    {
        var left = Enumerable.Range(1, head.Length - 1).Where(n => head[n] == n).ToHashSet();
        foreach (var row in matrix)
        {
            row.Remove(0);
        }

        var order = new List<int>();
        while (left.Count > 0)
        {
            var k = left.MinBy(n => (matrix[n].Count, n));
            left.Remove(k);
            order.Add(k);
            if (!matrix[k].TryGetValue(k, out var pivot) || pivot == Rational.Zero)
            {
                continue;
            }

            foreach (var i in matrix[k].Keys.Where(left.Contains))
            {
                var factor = matrix[i][k] / pivot;
                foreach (var (j, value) in matrix[k].Where(entry => left.Contains(entry.Key)))
                {
                    Add(matrix[i], j, Rational.Zero - (factor * value));
                }

                right[i] -= factor * right[k];
                matrix[i].Remove(k);
            }
        }

        var volts = Enumerable.Repeat(Rational.Zero, head.Length).ToArray();
        foreach (var k in Enumerable.Reverse(order))
        {
            if (matrix[k].TryGetValue(k, out var pivot) && pivot != Rational.Zero)
            {
                volts[k] = matrix[k].Where(entry => entry.Key != k)
                    .Aggregate(right[k], (sum, entry) => sum - (entry.Value * volts[entry.Key])) / pivot;
            }
        }

        return volts;
    }

    private static void Add(Dictionary<int, Rational> row, int column, Rational value) =>
        row[column] = row.TryGetValue(column, out var old) ? old + value : value;

    private static (int[] Head, Rational[] Offset) Join(Circuit circuit)
    {
        var head = Enumerable.Range(0, circuit.NodeCount).ToArray();
        var offset = Enumerable.Repeat(Rational.Zero, circuit.NodeCount).ToArray();
        foreach (var (from, to, curve) in circuit.Branches)
        {
            if (curve is FixedVoltage tie)
            {
                // The group with the higher head moves under the other, by the difference the source asks for.
                var (moved, kept) = head[from] > head[to] ? (head[from], head[to]) : (head[to], head[from]);
                var lift = offset[to] + Rational.Of(tie.Volts) - offset[from];
                lift = moved == head[from] ? lift : Rational.Zero - lift;
                for (var n = 0; n < head.Length; n++)
                {
                    if (head[n] == moved)
                    {
                        head[n] = kept;
                        offset[n] += lift;
                    }
                }
            }
        }

        return (head, offset);
    }

    private static int[] Islands(Circuit circuit, IReadOnlyList<Line> lines)
    {
        var island = Enumerable.Range(0, circuit.NodeCount).ToArray();
        for (var changed = true; changed;)
        {
            changed = false;
            for (var b = 0; b < lines.Count; b++)
            {
                var (from, to, curve) = circuit.Branches[b];
                if (island[from] != island[to] && (lines[b].Siemens > 0 || curve is FixedVoltage))
                {
                    island[from] = island[to] = Math.Min(island[from], island[to]);
                    changed = true;
                }
            }
        }

        return island;
    }
}
