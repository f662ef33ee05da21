using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Loomwright.Parts;

namespace Loomwright.Simulation;

/// <content>Operating points found from those of a healthy wiring that differs in a few links.</content>
internal sealed partial class Electrics
{
    private readonly Near? _near;
    private readonly Edits? _edits;
    private readonly bool _keeps;
    private readonly NearSolve? _nearSolve;
    private readonly List<NearMoment> _kept = [];
    private readonly Dictionary<List<ulong>, Found> _found = new(new SameConfiguration());
    private NearPoint? _lastPoint;
    private Found? _lastFound;
    private Found? _inNearSolve;
    private bool _keepsMoments;

    /// <summary>Ohms from some nodes to the reference, in the last moment solved.</summary>
    public void OhmsToReference(ReadOnlySpan<int> nodes, Span<double> ohms)
    {
        if (_lastFound?.Slopes is not { } slopes)
        {
            var all = _lastFound?.Ohms ?? OhmsInWhole();
            for (var n = 0; n < nodes.Length; n++)
            {
                ohms[n] = all[nodes[n]];
            }

            return;
        }

        if (_inNearSolve != _lastFound)
        {
            _nearSolve!.Take(slopes);
            _inNearSolve = _lastFound;
        }

        for (var n = 0; n < nodes.Length; n++)
        {
            ohms[n] = _nearSolve!.OhmsToReference(slopes.Moment.Rows[nodes[n]]);
        }
    }

    private void Show(Picture picture) => (_shown, ResidualAmps) = (picture, picture.ResidualAmps);

    private double[] OhmsInWhole()
    {
        var ohms = new double[Volts.Length];
        Whole.OhmsToReference(ohms);
        return ohms;
    }

    // Solves afresh, and keeps each configuration the first time.
    private bool Keep(Near near, State state, bool between, bool[]? coldNow)
    {
        Name(near.Varying, _wiring.Links, state, between, coldNow);
        if (near.Find(CollectionsMarshal.AsSpan(_configuration)) is { } point)
        {
            near.Use(point);
            return SolveMoments(state, between, coldNow);
        }

        _kept.Clear();

        _keepsMoments = true;
        var solved = SolveMoments(state, between, coldNow);
        _keepsMoments = false;
        if (solved && _kept.Count == _ends.Count && !Whole.HasIslands)
        {
            near.Use(near.Keep(CollectionsMarshal.AsSpan(_configuration), state, between, coldNow, [.. _kept], [.. SquareVolts], _ends.Count > 1 ? [.. _settled] : null));
        }
        else
        {
            near.Use(null);
        }

        return solved;
    }

    // From the same configuration of the other wiring where there is one, else by the whole network; each once.
    private bool SolveNear(Near near, State state, bool between, bool[]? coldNow)
    {
        Name(near.Varying, _edits is null ? _wiring.Links : near.Healthy.Links, state, between, coldNow);
        if (_found.TryGetValue(_configuration, out _lastFound))
        {
            Show(_lastFound.Picture);
            _lastPoint = _lastFound.Point ?? _lastPoint;
            return true;
        }

        Show(Picture.Empty(_wiring));
        _lastFound = FindNear(near, state, between, coldNow);
        if (_lastFound is null)
        {
            if (!SolveMoments(state, between, coldNow, near.Find(CollectionsMarshal.AsSpan(_configuration))))
            {
                return false;
            }

            _lastFound = new Found(_shown with { ResidualAmps = ResidualAmps }, null, null, OhmsInWhole());
        }

        _found.Add([.. _configuration], _lastFound);
        return true;
    }

    private Found? FindNear(Near near, State state, bool between, bool[]? coldNow)
    {
        _inNearSolve = null;
        if (_edits is null)
        {
            return null;
        }

        var point = near.Find(CollectionsMarshal.AsSpan(_configuration));
        var other = _lastPoint ?? (near.InOrder.Count > 0 ? near.InOrder[0] : null);
        if (!(point is null ? FromOther(near, other, state, between, coldNow) : From(point, heat: point.Heated is null ? null : (Curve[])point.Heated.Clone())))
        {
            return null;
        }

        _lastPoint = point ?? _lastPoint;
        return _inNearSolve = new Found(_shown with { ResidualAmps = ResidualAmps }, point, _nearSolve!.Found(), null);
    }

    // Filaments are heated on from what is given, and stand there in the end.
    private bool From(NearPoint point, Curve[]? heat)
    {
        for (var round = 0; round < MostRounds; round++)
        {
            if (!MeanFrom(point, heat))
            {
                return false;
            }

            if (heat is null || HeatFilaments(heat) <= SmallChange)
            {
                return true;
            }
        }

        return true;
    }

    // A configuration the healthy wiring was never in differs from one it was in by a few contacts and outputs more.
    private bool FromOther(Near near, NearPoint? other, State state, bool between, bool[]? coldNow)
    {
        if (_ends.Count > 1 || other is not { Heated: null, Moments: [var moment] } point)
        {
            return false;
        }

        var links = near.Healthy.Links;
        if (!Change(_nearSolve!, _edits!, links, point with { State = state, Between = between, ColdNow = coldNow }, 0))
        {
            return false;
        }

        foreach (var l in near.Varying)
        {
            var curve = CurveOf(links[l], l, state, between, 0, coldNow, heated: null);
            if (!ReferenceEquals(curve, moment.Curves[l]) && !_edits!.Changes(l) && !_nearSolve!.Change(l, links[l], links[l], curve))
            {
                return false;
            }
        }

        if (!_nearSolve!.Solve())
        {
            return false;
        }

        Array.Clear(Volts);
        Array.Clear(Amps);
        Array.Clear(SquareVolts);
        Add(moment);
        return true;
    }

    private bool MeanFrom(NearPoint point, Curve[]? heat)
    {
        Array.Clear(Volts);
        Array.Clear(Amps);
        Array.Clear(SquareVolts);
        ResidualAmps = 0;
        for (var m = 0; m < point.Moments.Length; m++)
        {
            if (!Change(_nearSolve!, _edits!, _near!.Healthy.Links, point, m, heat) || !_nearSolve!.Solve())
            {
                return false;
            }

            Add(point.Moments[m]);
        }

        return true;
    }

    /// <summary>Puts the edits of a wiring into an operating point of the healthy one; false when there are too many.</summary>
    internal static bool Change(NearSolve solve, Edits edits, ImmutableArray<Link> healthy, NearPoint point, int m, Curve[]? heat = null)
    {
        var moment = point.Moments[m];
        solve.Begin(moment, healthy);
        foreach (var (place, now) in edits.Changed)
        {
            if (!solve.Change(place, healthy[place], now, CurveOf(now, place, point.State, point.Between, moment.Start, point.ColdNow, heat ?? point.Heated)))
            {
                return false;
            }
        }

        for (var l = 0; heat is not null && l < heat.Length; l++)
        {
            if (!ReferenceEquals(heat[l], point.Heated![l]) && !edits.Changes(l) && !solve.Change(l, healthy[l], healthy[l], CurveOf(healthy[l], l, point.State, point.Between, moment.Start, point.ColdNow, heat)))
            {
                return false;
            }
        }

        for (var a = 0; a < edits.Added.Length; a++)
        {
            if (!solve.Change(healthy.Length + a, null, edits.Added[a], edits.Added[a].Curve))
            {
                return false;
            }
        }

        return true;
    }

    // As it would be added from the whole network.
    private void Add(NearMoment moment)
    {
        var rows = _nearSolve!.Volts();
        for (var n = 0; n < Volts.Length; n++)
        {
            Volts[n] += moment.Share * (moment.Volts[n] + rows[moment.Rows[n]]);
        }

        var links = _near!.Healthy.Links;
        for (var l = 0; l < links.Length; l++)
        {
            var (from, to) = (links[l].From, links[l].To);
            var moved = rows[moment.Rows[from]] - rows[moment.Rows[to]];
            var volts = moment.Volts[from] - moment.Volts[to] + moved;
            Amps[l] += moment.Share * (moment.Amps[l] + (moment.Siemens[l] * moved));
            SquareVolts[l] += moment.Share * volts * volts;
        }

        _nearSolve!.PutRight(Amps, SquareVolts);
    }

    // A configuration found before: its picture, the near point of the same configuration if there is one, and the ohms to
    // the reference: what they can be found from, or all of them from the whole network.
    private sealed record Found(Picture Picture, NearPoint? Point, NearSolve.Slopes? Slopes, double[]? Ohms);

    private sealed class SameConfiguration : IEqualityComparer<List<ulong>>
    {
        public bool Equals(List<ulong>? x, List<ulong>? y) => CollectionsMarshal.AsSpan(x).SequenceEqual(CollectionsMarshal.AsSpan(y));

        public int GetHashCode(List<ulong> words)
        {
            var hash = default(HashCode);
            foreach (var word in words)
            {
                hash.Add(word);
            }

            return hash.ToHashCode();
        }
    }
}
