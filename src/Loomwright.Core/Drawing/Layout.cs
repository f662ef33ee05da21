namespace Loomwright.Drawing;

/// <summary>
/// Coordinates and paths for an arrangement. There are two shapes of wire. Within a channel: level, upright, level. Else: level,
/// upright, a lane of the spine, upright, level. Every upright has a track and every lane a height of its own wherever two would
/// lie beside each other, and rows of neighbouring columns are half a row apart unless moved, so no two wires can overlap.
/// </summary>
internal sealed class Layout
{
    public const double Row = 20;
    public const double LaneGap = 10;
    public const double TrackGap = 9;
    public const double Pad = 4;
    private const double Off = 10;
    private const double Near = 14;

    private readonly Plates _plates;
    private readonly Arrangement _at;
    private readonly double[] _top;
    private readonly bool[] _isAbove;
    private readonly int[] _lane;
    private readonly int[] _track1;
    private readonly int[] _track2;
    private readonly Kept? _kept;
    private double _spineHeight;

    /// <param name="kept">Where the boxes stand, when that is given; what has no room between them then has no path.</param>
    public Layout(Plates plates, Arrangement at, Kept? kept = null)
    {
        (_plates, _at, _kept) = (plates, at, kept);
        _top = new double[plates.All.Length];
        _isAbove = new bool[plates.All.Length];
        (_lane, _track1, _track2) = (new int[plates.Lines.Length], new int[plates.Lines.Length], new int[plates.Lines.Length]);
        Array.Fill(_track1, -1);
        Array.Fill(_track2, -1);
        if (kept is null)
        {
            Stack();
        }
        else
        {
            Take(kept);
        }

        SortShared();
        Lanes();
        Tracks();
    }

    public double Width { get; private set; }

    public double Height { get; private set; }

    /// <summary>The left edge and the width of each column.</summary>
    public double[] ColumnLeft { get; private set; } = [];

    public double[] ColumnWidth { get; private set; } = [];

    /// <summary>The path of every line, in their order; empty where the kept places leave no room.</summary>
    public Spot[][] Paths { get; private set; } = [];

    public bool IsAbove(Plate plate) => _isAbove[plate.Index];

    public double SpineHeight => _spineHeight;

    public double SpineMiddle => _spineHeight / 2;

    /// <summary>The middle height of a row.</summary>
    public double Y(Plate plate, int row) => _top[plate.Index] + (_isAbove[plate.Index] ? 0 : _spineHeight) + (row * Row) + (Row / 2);

    public double Middle(Plate plate) => _kept?.Middle[plate.Index] ?? ColumnLeft[plate.Column] + (ColumnWidth[plate.Column] / 2);

    private void Take(Kept kept)
    {
        _spineHeight = kept.SpineHeight;
        foreach (var plate in _plates.Standing)
        {
            _isAbove[plate.Index] = kept.IsAbove[plate.Index];
            _top[plate.Index] = kept.Top[plate.Index] - (kept.IsAbove[plate.Index] ? 0 : kept.SpineHeight);
        }
    }

    // Heights with a spine of no height; what stands below is moved down by it later.
    private void Stack()
    {
        for (var c = 0; c < _at.Columns; c++)
        {
            var parity = c % 2 == 0 ? 0 : Row / 2;
            var at = -Off - parity;
            for (var i = 0; i < _at.Above[c].Count; i++)
            {
                var plate = _at.Above[c][i];
                at -= (plate.Rows.Count * Row) + (_at.HalfRows[plate.Index] * Row / 2);
                _top[plate.Index] = at;
                _isAbove[plate.Index] = true;
                at -= Row + (i + 1 == _at.Above[c].Count || _at.Above[c][i + 1].Place != plate.Place ? Row : 0);
            }

            at = Off + parity;
            for (var i = 0; i < _at.Below[c].Count; i++)
            {
                var plate = _at.Below[c][i];
                at += (i == 0 || _at.Below[c][i - 1].Place != plate.Place ? Row : 0) + (_at.HalfRows[plate.Index] * Row / 2);
                _top[plate.Index] = at;
                at += (plate.Rows.Count + 1) * Row;
            }
        }
    }

    // On one terminal the wire that goes up takes the upper row.
    private void SortShared()
    {
        foreach (var plate in _plates.Standing)
        {
            foreach (var (ends, first) in plate.Shared)
            {
                var target = ends.ToDictionary(e => e, Target);
                ends.Sort((a, b) => target[a] == target[b] ? a.Plate.Ends.IndexOf(a).CompareTo(b.Plate.Ends.IndexOf(b)) : target[a].CompareTo(target[b]));
                for (var i = 0; i < ends.Count; i++)
                {
                    ends[i].Row = first + i;
                }
            }
        }

        double Target(End end)
        {
            var line = _plates.Of(end);
            var other = line.A == end ? line.B : line.A;
            return other.Channel == end.Channel ? _top[other.Plate.Index] + (other.Plate.Rows.Count * Row / 2) : 0;
        }
    }

    private static bool UsesSpine(Line line) => line.A.Channel != line.B.Channel;

    private void Lanes()
    {
        var lanes = _plates.Lines.Where(UsesSpine).Select(l =>
        {
            var (left, right) = l.A.Channel < l.B.Channel ? (l.A, l.B) : (l.B, l.A);
            return new Lane(l.Index, Turn(left), Turn(right));
        }).ToArray();
        var price = new int[lanes.Length, lanes.Length];
        for (var a = 0; a < lanes.Length; a++)
        {
            for (var b = 0; b < lanes.Length; b++)
            {
                price[a, b] = a == b ? 0 : lanes[a].PriceAbove(lanes[b]);
            }
        }

        var order = Ordering.Best(price);
        var level = new int[lanes.Length];
        for (var i = 0; i < order.Length; i++)
        {
            var lane = lanes[order[i]];
            for (var j = 0; j < i; j++)
            {
                level[order[i]] = lanes[order[j]].Meets(lane) ? Math.Max(level[order[i]], level[order[j]] + 1) : level[order[i]];
            }

            _lane[lane.Line] = level[order[i]];
        }

        var levels = level.DefaultIfEmpty(-1).Max() + 1;
        _spineHeight = _kept is not null ? _kept.SpineHeight : Math.Ceiling(levels * LaneGap / Row) * Row;

        Lane.Turn Turn(End end) => new(end.Channel, _isAbove[end.Plate.Index], end.Right, _top[end.Plate.Index] + (end.Row * Row));
    }

    private void Tracks()
    {
        var zones = new double[(_at.Columns + 1) * 2];
        ColumnWidth = new double[_at.Columns];
        foreach (var plate in _plates.Standing)
        {
            ColumnWidth[plate.Column] = Math.Max(ColumnWidth[plate.Column], Plates.Even(plate.Footprint + (2 * Pad)));
        }

        foreach (var line in _plates.Lines)
        {
            foreach (var end in new[] { line.A, line.B })
            {
                var zone = (end.Channel * 2) + (end.Right ? 0 : 1);
                zones[zone] = Math.Max(zones[zone], line.LabelWidth + 12 - ((ColumnWidth[end.Plate.Column] - end.Plate.Width) / 2));
            }
        }

        ColumnLeft = _kept is null ? new double[_at.Columns] : [.. _kept.ColumnMiddle.Select((m, c) => m - (ColumnWidth[c] / 2))];
        var (start, limit) = (new double[_at.Columns + 1], new double[_at.Columns + 1]);
        var x = 0.0;
        for (var channel = 0; channel <= _at.Columns; channel++)
        {
            var tracks = OrderTracks(channel);
            var isOuter = channel == 0 || channel == _at.Columns;
            var wide = 2 * Math.Ceiling(Math.Max(zones[channel * 2] + zones[(channel * 2) + 1] + (tracks * TrackGap) + (tracks == 0 ? 0 : 2), isOuter ? 0 : 14) / 2);
            x = _kept is not null && channel == 0 && _at.Columns > 0 ? ColumnLeft[0] - wide : x;
            start[channel] = x + zones[channel * 2] + 4;
            limit[channel] = double.MaxValue;
            x += wide;
            if (channel < _at.Columns)
            {
                limit[channel] = _kept is null || isOuter ? double.MaxValue : ColumnLeft[channel] - zones[(channel * 2) + 1];
                ColumnLeft[channel] = _kept is null ? x : ColumnLeft[channel];
                x = ColumnLeft[channel] + ColumnWidth[channel];
            }
        }

        Width = x;
        Paths = [.. _plates.Lines.Select(l => Path(l, start)).Select((p, i) => HasRoom(p, _plates.Lines[i], limit) ? p : [])];
        var (up, down) = (0.0, 0.0);
        foreach (var plate in _plates.Standing)
        {
            up = Math.Min(up, _top[plate.Index] - (2 * Row));
            down = Math.Max(down, _top[plate.Index] + (plate.Rows.Count * Row) + Row);
        }

        Height = down - up + _spineHeight;
        Top = up;
    }

    /// <summary>The height everything begins at.</summary>
    public double Top { get; private set; }

    private int OrderTracks(int channel)
    {
        var uprights = new List<Upright>();
        foreach (var line in _plates.Lines)
        {
            if (UsesSpine(line))
            {
                foreach (var (end, other) in new[] { (line.A, line.B), (line.B, line.A) })
                {
                    if (end.Channel == channel)
                    {
                        uprights.Add(new Upright(line.Index, end == line.A, Y(end.Plate, end.Row), !end.Right, LaneY(line.Index), other.Channel > channel));
                    }
                }
            }
            else if (line.A.Channel == channel && Y(line.A.Plate, line.A.Row) != Y(line.B.Plate, line.B.Row))
            {
                uprights.Add(new Upright(line.Index, true, Y(line.A.Plate, line.A.Row), !line.A.Right, Y(line.B.Plate, line.B.Row), !line.B.Right));
            }
        }

        var price = new int[uprights.Count, uprights.Count];
        for (var a = 0; a < uprights.Count; a++)
        {
            for (var b = 0; b < uprights.Count; b++)
            {
                price[a, b] = a == b ? 0 : uprights[a].PriceLeftOf(uprights[b]);
            }
        }

        var order = Ordering.Best(price);
        var level = new int[uprights.Count];
        for (var i = 0; i < order.Length; i++)
        {
            var upright = uprights[order[i]];
            for (var j = 0; j < i; j++)
            {
                level[order[i]] = uprights[order[j]].Meets(upright, Near) ? Math.Max(level[order[i]], level[order[j]] + 1) : level[order[i]];
            }

            (upright.AtA ? _track1 : _track2)[upright.Line] = level[order[i]];
        }

        return level.DefaultIfEmpty(-1).Max() + 1;
    }

    private bool HasRoom(Spot[] path, Line line, double[] limit) =>
        _kept is null
        || ((!UsesSpine(line) || LaneY(line.Index) < _spineHeight)
            && (path.Length == 2 || (path[1].X < limit[line.A.Channel] && path[^2].X < limit[line.B.Channel])));

    private double LaneY(int line) => (_lane[line] * LaneGap) + (LaneGap / 2);

    private Spot[] Path(Line line, double[] start)
    {
        var (from, to) = (Edge(line.A), Edge(line.B));
        if (UsesSpine(line))
        {
            var (x1, x2, y) = (Track(line.A, _track1), Track(line.B, _track2), LaneY(line.Index));
            return [from, new(x1, from.Y), new(x1, y), new(x2, y), new(x2, to.Y), to];
        }

        if (from.Y == to.Y)
        {
            return [from, to];
        }

        var x = Track(line.A, _track1);
        return [from, new(x, from.Y), new(x, to.Y), to];

        double Track(End end, int[] tracks) => start[end.Channel] + (TrackGap / 2) + (tracks[line.Index] * TrackGap);
    }

    private Spot Edge(End end) => new(Middle(end.Plate) + (end.Right ? 1 : -1) * end.Plate.Width / 2, Y(end.Plate, end.Row));
}
