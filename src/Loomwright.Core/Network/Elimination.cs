using System.Numerics;

namespace Loomwright.Network;

/// <summary>
/// The order in which unknown nodes are eliminated and where every number of the factors is kept; depends on the
/// topology alone. Dangling and series nodes that touch only straight branches come first, so that a bending network
/// takes them out once and not in every Newton step; then the node with the fewest neighbours left.
/// </summary>
internal sealed class Elimination
{
    /// <param name="nodes">Unknown nodes.</param>
    /// <param name="edges">Pairs of unknown nodes that share a branch.</param>
    /// <param name="straight">Whether only straight branches end at a node.</param>
    public Elimination(int nodes, IReadOnlyList<(int A, int B)> edges, bool[] straight)
    {
        Place = new int[nodes];
        var neighbours = new Neighbours(nodes, edges);
        var columns = new int[nodes][];
        for (var k = 0; k < nodes; k++)
        {
            var (node, collapses) = neighbours.Next(straight, CollapsedCount == k);
            CollapsedCount += collapses ? 1 : 0;
            Place[node] = k;
            columns[k] = neighbours.Eliminate(node);
        }

        Start = new int[nodes + 1];
        var rows = new List<int>();
        for (var k = 0; k < nodes; k++)
        {
            var column = columns[k].AsSpan();
            for (var i = 0; i < column.Length; i++)
            {
                column[i] = Place[column[i]];
            }

            column.Sort();
            rows.AddRange(column);
            Start[k + 1] = rows.Count;
        }

        Row = [.. rows];
        PairStart = new int[nodes + 1];
        var pairs = new List<int>();
        for (var k = 0; k < nodes; k++)
        {
            for (var i = Start[k]; i < Start[k + 1]; i++)
            {
                for (var j = i + 1; j < Start[k + 1]; j++)
                {
                    pairs.Add(Slot(Row[i], Row[j]));
                }
            }

            PairStart[k + 1] = pairs.Count;
        }

        Pair = [.. pairs];
    }

    /// <summary>Where each unknown node stands in the order.</summary>
    public int[] Place { get; }

    /// <summary>How many nodes at the front collapse.</summary>
    public int CollapsedCount { get; }

    /// <summary>Slots of column k: <c>Start[k] .. Start[k + 1]</c>; one slot per pair of places that are joined or become so.</summary>
    public int[] Start { get; }

    /// <summary>The later place of each slot, ascending within a column.</summary>
    public int[] Row { get; }

    /// <summary>Where column k's pairs begin in <see cref="Pair"/>.</summary>
    public int[] PairStart { get; }

    /// <summary>For every pair of rows of a column, in order, the slot that joins those two.</summary>
    public int[] Pair { get; }

    /// <summary>The slot of two different places.</summary>
    public int Slot(int a, int b)
    {
        var column = Math.Min(a, b);
        return Array.BinarySearch(Row, Start[column], Start[column + 1] - Start[column], Math.Max(a, b));
    }

    // Neighbour sets as bits: joining two sets is a few words of OR.
    private sealed class Neighbours
    {
        private readonly int _words;
        private readonly ulong[] _bits;
        private readonly int[] _degree;
        private readonly List<int> _left;

        public Neighbours(int nodes, IReadOnlyList<(int A, int B)> edges)
        {
            _words = (nodes + 63) / 64;
            _bits = new ulong[nodes * _words];
            foreach (var (a, b) in edges)
            {
                Of(a)[b / 64] |= 1UL << (b % 64);
                Of(b)[a / 64] |= 1UL << (a % 64);
            }

            _left = [.. Enumerable.Range(0, nodes)];
            _degree = new int[nodes];
            for (var n = 0; n < nodes; n++)
            {
                _degree[n] = Count(Of(n));
            }
        }

        public (int Node, bool Collapses) Next(bool[] straight, bool collapsing)
        {
            var best = -1;
            foreach (var n in _left)
            {
                if (collapsing && straight[n] && _degree[n] <= 2)
                {
                    return (n, true);
                }

                best = best < 0 || _degree[n] < _degree[best] ? n : best;
            }

            return (best, false);
        }

        public int[] Eliminate(int node)
        {
            var mine = Of(node);
            var list = Members(mine, _degree[node]);
            foreach (var other in list)
            {
                var bits = Of(other);
                for (var w = 0; w < bits.Length; w++)
                {
                    bits[w] |= mine[w];
                }

                bits[other / 64] &= ~(1UL << (other % 64));
                bits[node / 64] &= ~(1UL << (node % 64));
                _degree[other] = Count(bits);
            }

            _left.Remove(node);
            return list;
        }

        private Span<ulong> Of(int node) => _bits.AsSpan(node * _words, _words);

        private static int Count(ReadOnlySpan<ulong> bits)
        {
            var count = 0;
            foreach (var word in bits)
            {
                count += BitOperations.PopCount(word);
            }

            return count;
        }

        private static int[] Members(ReadOnlySpan<ulong> bits, int count)
        {
            var list = new int[count];
            var next = 0;
            for (var w = 0; w < bits.Length; w++)
            {
                for (var left = bits[w]; left != 0; left &= left - 1)
                {
                    list[next++] = (w * 64) + BitOperations.TrailingZeroCount(left);
                }
            }

            return list;
        }
    }
}
