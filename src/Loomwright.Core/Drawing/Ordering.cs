namespace Loomwright.Drawing;

/// <summary>Puts things in a row at the least price, where the price is a sum over pairs.</summary>
internal static class Ordering
{
    private const int MostRounds = 12;

    /// <summary>An order that no moving of a single thing makes cheaper.</summary>
    /// <param name="price">What it costs that the first index stands before the second.</param>
    public static int[] Best(int[,] price)
    {
        var count = price.GetLength(0);
        var order = Enumerable.Range(0, count).ToArray();
        for (var round = 0; round < MostRounds && Improve(order, price); round++)
        {
        }

        return order;
    }

    private static bool Improve(int[] order, int[,] price)
    {
        var improved = false;
        for (var from = 0; from < order.Length; from++)
        {
            var thing = order[from];
            var (best, bestGain, gain) = (from, 0, 0);
            for (var to = from + 1; to < order.Length; to++)
            {
                gain += price[thing, order[to]] - price[order[to], thing];
                (best, bestGain) = gain > bestGain ? (to, gain) : (best, bestGain);
            }

            gain = 0;
            for (var to = from - 1; to >= 0; to--)
            {
                gain += price[order[to], thing] - price[thing, order[to]];
                (best, bestGain) = gain > bestGain ? (to, gain) : (best, bestGain);
            }

            if (best != from)
            {
                var step = best > from ? 1 : -1;
                for (var at = from; at != best; at += step)
                {
                    order[at] = order[at + step];
                }

                order[best] = thing;
                improved = true;
            }
        }

        return improved;
    }
}
