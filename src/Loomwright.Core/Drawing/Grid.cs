namespace Loomwright.Drawing;

/// <summary>
/// The sheet as points 4 pixels apart, with what stands in the way of one more wire. The rows and edges it must meet get points
/// of their own.
/// </summary>
internal sealed class Grid
{
    private const double Step = 4;

    // How far a wire keeps off parts, and its bends off the bends and ends of others.
    private const double OffParts = 5;
    private const double OffBends = 7;

    private readonly double[] _xs;
    private readonly double[] _ys;
    private readonly bool[] _solid;
    private readonly bool[] _besideLevel;
    private readonly bool[] _besideUpright;
    private readonly byte[] _cutsUpright;
    private readonly byte[] _cutsLevel;

    /// <param name="apart">How far it keeps off wires it runs beside.</param>
    public Grid(Area body, IEnumerable<Area> parts, IEnumerable<Area> texts, IReadOnlyList<Spot[]> paths, IReadOnlyList<Spot> own, double apart)
    {
        _xs = Points(body.X, body.Right, own.Select(s => s.X));
        _ys = Points(body.Y, body.Bottom, own.Select(s => s.Y));
        var cells = _xs.Length * _ys.Length;
        (_solid, _besideLevel, _besideUpright) = (new bool[cells], new bool[cells], new bool[cells]);
        (_cutsUpright, _cutsLevel) = (new byte[cells], new byte[cells]);
        foreach (var part in parts)
        {
            Mark(_solid, part.Inside(-OffParts));
        }

        foreach (var text in texts)
        {
            Mark(_solid, text.Inside(-2));
        }

        foreach (var path in paths)
        {
            for (var i = 1; i < path.Length; i++)
            {
                Run(path[i - 1], path[i], apart);
            }

            foreach (var spot in path)
            {
                Mark(_solid, new Area(spot.X - OffBends, spot.Y - OffBends, 2 * OffBends, 2 * OffBends));
            }
        }
    }

    public int Columns => _xs.Length;

    public int Count => _solid.Length;

    public Spot At(int cell) => new(_xs[cell % _xs.Length], _ys[cell / _xs.Length]);

    /// <summary>The point at exactly that spot, or -1.</summary>
    public int Of(Spot spot)
    {
        var (x, y) = (Array.BinarySearch(_xs, spot.X), Array.BinarySearch(_ys, spot.Y));
        return x < 0 || y < 0 ? -1 : (y * _xs.Length) + x;
    }

    /// <summary>The next point that way, 0 right, 1 down, 2 left, 3 up; -1 at the edge.</summary>
    public int Next(int cell, int way) => way switch
    {
        0 => cell % _xs.Length + 1 < _xs.Length ? cell + 1 : -1,
        1 => cell + _xs.Length < Count ? cell + _xs.Length : -1,
        2 => cell % _xs.Length > 0 ? cell - 1 : -1,
        _ => cell - _xs.Length,
    };

    /// <summary>Whether a wire may be at the point while it goes that way.</summary>
    public bool IsOpen(int cell, int way) => !_solid[cell] && !(way % 2 == 0 ? _besideLevel : _besideUpright)[cell];

    public bool MayBend(int cell) => !_besideLevel[cell] && !_besideUpright[cell];

    /// <summary>How many wires are crossed from a point to its neighbour.</summary>
    public int Cuts(int cell, int next, int way) => way % 2 == 0 ? _cutsUpright[Math.Min(cell, next)] : _cutsLevel[Math.Min(cell, next)];

    private static double[] Points(double from, double to, IEnumerable<double> own) =>
        [.. Enumerable.Range(0, (int)((to - from) / Step) + 1).Select(i => from + (i * Step)).Concat(own).Distinct().Order()];

    private void Run(Spot a, Spot b, double apart)
    {
        var area = new Area(Math.Min(a.X, b.X) - apart, Math.Min(a.Y, b.Y) - apart, Math.Abs(a.X - b.X) + (2 * apart), Math.Abs(a.Y - b.Y) + (2 * apart));
        if (a.Y == b.Y)
        {
            Mark(_besideLevel, area);
            Cut(_cutsLevel, _xs, Math.Min(a.X, b.X), Math.Max(a.X, b.X), _ys, a.Y, 1, _xs.Length);
        }
        else
        {
            Mark(_besideUpright, area);
            Cut(_cutsUpright, _ys, Math.Min(a.Y, b.Y), Math.Max(a.Y, b.Y), _xs, a.X, _xs.Length, 1);
        }
    }

    // Between the last point before the run and the first one behind it.
    private static void Cut(byte[] cuts, double[] along, double from, double to, double[] across, double at, int alongStep, int acrossStep)
    {
        var found = Array.BinarySearch(across, at);
        var before = (found < 0 ? ~found : found) - 1;
        for (var i = 0; before >= 0 && i < along.Length; i++)
        {
            var cell = (i * alongStep) + (before * acrossStep);
            cuts[cell] += (byte)(along[i] > from && along[i] < to && cuts[cell] < byte.MaxValue ? 1 : 0);
        }
    }

    private void Mark(bool[] marks, Area area)
    {
        for (var y = First(_ys, area.Y); y < _ys.Length && _ys[y] < area.Bottom; y++)
        {
            for (var x = First(_xs, area.X); x < _xs.Length && _xs[x] < area.Right; x++)
            {
                marks[(y * _xs.Length) + x] = true;
            }
        }
    }

    // The first point beyond, not on it.
    private static int First(double[] points, double at)
    {
        var found = Array.BinarySearch(points, at);
        return found >= 0 ? found + 1 : ~found;
    }
}
