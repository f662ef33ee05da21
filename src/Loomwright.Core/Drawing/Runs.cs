namespace Loomwright.Drawing;

/// <summary>The level and upright runs of a set of paths, and what they do to each other.</summary>
internal sealed class Runs
{
    // Bodies and outlines nearer than this run into each other.
    private const double Apart = 6;

    private readonly List<Run> _levels = [];
    private readonly List<Run> _uprights = [];
    private readonly int _paths;

    public Runs(IReadOnlyList<IReadOnlyList<Spot>> paths)
    {
        _paths = paths.Count;
        for (var p = 0; p < paths.Count; p++)
        {
            for (var i = 1; i < paths[p].Count; i++)
            {
                var (a, b) = (paths[p][i - 1], paths[p][i]);
                if (a.Y == b.Y && a.X != b.X)
                {
                    _levels.Add(new Run(p, a.Y, Math.Min(a.X, b.X), Math.Max(a.X, b.X)));
                }
                else if (a.X == b.X && a.Y != b.Y)
                {
                    _uprights.Add(new Run(p, a.X, Math.Min(a.Y, b.Y), Math.Max(a.Y, b.Y)));
                }
            }
        }

        _levels.Sort((a, b) => a.At.CompareTo(b.At));
        _uprights.Sort((a, b) => a.At.CompareTo(b.At));
    }

    /// <summary>Every place where an upright of one path crosses a level run of another.</summary>
    public IEnumerable<(int Upright, int Level)> Crossings()
    {
        foreach (var up in _uprights)
        {
            for (var i = Behind(up.From); i < _levels.Count && _levels[i].At < up.To; i++)
            {
                var level = _levels[i];
                if (up.Path != level.Path && level.From < up.At && up.At < level.To)
                {
                    yield return (up.Path, level.Path);
                }
            }
        }
    }

    /// <summary>Stretches where two paths lie side by side too near to be told apart.</summary>
    public int Overlaps() => Beside(_levels) + Beside(_uprights);

    /// <summary>Places where a path bends or ends on another without crossing it.</summary>
    public int Touches()
    {
        var count = 0;
        foreach (var up in _uprights)
        {
            foreach (var level in _levels)
            {
                var meets = up.Path != level.Path && level.From - Apart < up.At && up.At < level.To + Apart && up.From - Apart < level.At && level.At < up.To + Apart;
                var crosses = level.From + Apart <= up.At && up.At <= level.To - Apart && up.From + Apart <= level.At && level.At <= up.To - Apart;
                var nearBend = Near(up.At, level.From) || Near(up.At, level.To) || Near(level.At, up.From) || Near(level.At, up.To);
                count += meets && !crosses && nearBend ? 1 : 0;
            }
        }

        return count;

        static bool Near(double a, double b) => Math.Abs(a - b) < Apart / 2;
    }

    /// <summary>By path: crossings in which it is the upright, less those in which it is the level one.</summary>
    public int[] Uprightness()
    {
        var score = new int[_paths];
        foreach (var (up, level) in Crossings())
        {
            score[up]++;
            score[level]--;
        }

        return score;
    }

    /// <summary>Bends and whole length of all paths.</summary>
    public (int Bends, double Length) Effort() =>
        (_levels.Count + _uprights.Count - _paths, _levels.Sum(r => r.To - r.From) + _uprights.Sum(r => r.To - r.From));

    /// <summary>How many runs go through the inside of an area.</summary>
    public int Through(Area area, Func<int, bool> counts) =>
        _levels.Count(r => counts(r.Path) && r.From < area.Right && area.X < r.To && area.Y < r.At && r.At < area.Bottom)
        + _uprights.Count(r => counts(r.Path) && r.From < area.Bottom && area.Y < r.To && area.X < r.At && r.At < area.Right);

    private static int Beside(List<Run> runs)
    {
        var count = 0;
        for (var a = 0; a < runs.Count; a++)
        {
            for (var b = a + 1; b < runs.Count && runs[b].At - runs[a].At < Apart; b++)
            {
                count += runs[a].Path != runs[b].Path && runs[a].From < runs[b].To && runs[b].From < runs[a].To ? 1 : 0;
            }
        }

        return count;
    }

    // The first level run below a height.
    private int Behind(double y)
    {
        var (low, high) = (0, _levels.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = _levels[middle].At > y ? (low, middle) : (middle + 1, high);
        }

        return low;
    }

    private readonly record struct Run(int Path, double At, double From, double To);
}
