namespace Loomwright.Drawing;

/// <summary>Finds the way of one wire among others that stay: shortest first (A*), where a bend and a crossing count as a detour.</summary>
internal static class Router
{
    private const int PerStep = 1;
    private const int PerBend = 12;
    private const int PerCrossing = 14;
    private const double StepPixels = 4;

    /// <summary>The way from one point to the other, or null.</summary>
    /// <param name="leaves">Which way it leaves the first: 0 right, 2 left.</param>
    /// <param name="arrives">Which way it arrives at the second.</param>
    public static List<Spot>? Way(Grid grid, Spot from, int leaves, Spot to, int arrives)
    {
        var (start, goal) = (grid.Of(from), grid.Of(to));
        if (start < 0 || goal < 0 || !grid.IsOpen(start, leaves) || !grid.IsOpen(goal, arrives))
        {
            return null;
        }

        var price = new int[grid.Count * 4];
        var cameBy = new byte[grid.Count * 4];
        Array.Fill(price, int.MaxValue);
        var open = new PriorityQueue<int, int>();
        price[(start * 4) + leaves] = 0;
        cameBy[(start * 4) + leaves] = (byte)leaves;
        open.Enqueue((start * 4) + leaves, 0);
        while (open.TryDequeue(out var state, out var estimate))
        {
            var (cell, way) = (state / 4, state % 4);
            if (cell == goal && way == arrives)
            {
                return Walked(grid, cameBy, state, (start * 4) + leaves);
            }

            if (estimate > price[state] + Ahead(cell))
            {
                continue;
            }

            for (var next = 0; next < 4; next++)
            {
                if (next == (way + 2) % 4 || (next != way && !grid.MayBend(cell)))
                {
                    continue;
                }

                var neighbour = grid.Next(cell, next);
                if (neighbour < 0 || !grid.IsOpen(neighbour, next))
                {
                    continue;
                }

                var sum = price[state] + (int)Math.Ceiling(Apart(grid.At(cell), grid.At(neighbour)) / StepPixels * PerStep)
                    + (next == way ? 0 : PerBend) + (PerCrossing * grid.Cuts(cell, neighbour, next));
                var reached = (neighbour * 4) + next;
                if (sum < price[reached])
                {
                    (price[reached], cameBy[reached]) = (sum, (byte)way);
                    open.Enqueue(reached, sum + Ahead(neighbour));
                }
            }
        }

        return null;

        int Ahead(int cell) => (int)(Apart(grid.At(cell), to) / StepPixels);
    }

    private static double Apart(Spot a, Spot b) => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y);

    // Back from the goal, keeping the bends.
    private static List<Spot> Walked(Grid grid, byte[] cameBy, int state, int start)
    {
        var way = new List<Spot> { grid.At(state / 4) };
        while (state != start)
        {
            var (cell, next) = (state / 4, state % 4);
            var before = cameBy[state];
            var previous = grid.Next(cell, (next + 2) % 4);
            if (before != next)
            {
                way.Add(grid.At(previous));
            }

            state = (previous * 4) + before;
        }

        if (way[^1] != grid.At(start / 4))
        {
            way.Add(grid.At(start / 4));
        }

        way.Reverse();
        return way;
    }
}
