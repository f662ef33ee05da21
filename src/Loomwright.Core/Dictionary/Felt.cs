using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;

namespace Loomwright.Dictionary;

/// <summary>
/// Whether a changed link is felt at an operating point of the healthy wiring by anything that decides what happens next, or
/// is shown by what is seen or measured there. What is not felt goes on as in the healthy wiring. Not for two threads at once.
/// </summary>
internal sealed class Felt
{
    // Nearer than this to where something turns over, what is felt is not told by a difference alone.
    private const double Guard = 0.01;

    // Far below what a meter shows and an eye tells.
    private const double ShownVolts = 0.5e-3;
    private const double ShownAmps = 20e-6;
    private const double ShownShare = 1e-4;

    // A ladder tells its buttons by little.
    private const double MostOnDataVolts = 0.02;

    private readonly Wiring _healthy;
    private readonly NearSolve _solve = new();
    private readonly DataLeads _leads;
    private readonly double[] _volts;
    private readonly int[] _boxNodes;
    private readonly int[] _lightNodes;
    private readonly int[] _seenLinks;
    private readonly Turn[] _turns;
    private readonly int[] _points;

    public Felt(Wiring healthy, ImmutableArray<TerminalRef> points)
    {
        _healthy = healthy;
        _points = [.. points.Select(p => healthy.NodeOf(p) ?? 0).Distinct()];
        _leads = new DataLeads(healthy);
        _volts = new double[healthy.NodeCount];
        _boxNodes = [.. healthy.Boxes.SelectMany(b => b.InputNodes.Append(b.SupplyNode).Append(b.GroundNode).Concat(new[] { b.Data.First, b.Data.Second }.Where(n => n >= 0))).Distinct()];
        _lightNodes = [.. healthy.Boxes.SelectMany(b => b.Lights.Where(l => l.Means == LightMeans.Voltage).Select(l => l.Node)).Concat(_points).Distinct()];
        _seenLinks = [.. healthy.Sights.Select(s => s.Link).Concat(healthy.Supplies).Concat(healthy.Boxes.SelectMany(b => b.OutputLinks.Where(l => l >= 0))).Concat(healthy.Fuses.Select(f => f.Link)).Distinct()];
        _turns =
        [
            .. healthy.Colds.Select(l => new Turn(l, Stepping.WarmsAboveAmps, Stepping.WarmsAboveVolts)),
            .. from box in healthy.Boxes
               from o in Enumerable.Range(0, box.OutputLinks.Length)
               where box.OutputLinks[o] >= 0
               from amps in new[] { box.Facts.Outputs[o].LimitAmps, box.Facts.Outputs[o].LampOutBelowAmps }
               where amps is not null
               select new Turn(box.OutputLinks[o], amps.Value, 0),
            .. healthy.Fuses.SelectMany(f => new[] { new Turn(f.Link, f.RatingAmps, 0), new Turn(f.Link, f.RatingAmps * f.Band.OpensAtShare, 0) }),
        ];
    }

    // What happens when the current of a link goes past some amps, while it has more than some volts.
    private readonly record struct Turn(int Link, double Amps, double Volts);

    /// <summary>Whether anything but a meter feels it, and whether a meter at one of the points does.</summary>
    public (bool Felt, bool Shown) At(NearPoint point, Edits edits)
    {
        var shown = false;
        for (var m = 0; m < point.Moments.Length; m++)
        {
            if (!Electrics.Change(_solve, edits, _healthy.Links, point, m))
            {
                return (true, true);
            }

            if (_solve.Count == 0)
            {
                continue;
            }

            if (!_solve.Solve(bound: true) || Decides(point, point.Moments[m]))
            {
                return (true, true);
            }

            shown = shown || Shows(point.Moments[m]);
        }

        return (false, shown);
    }

    private bool Decides(NearPoint point, NearMoment moment)
    {
        foreach (var turn in _turns)
        {
            var (volts, amps) = Of(moment, turn.Link);
            var before = Side(turn, Before(moment, turn.Link), moment.Amps[turn.Link]);
            if (before is null || before != Side(turn, volts, amps))
            {
                return true;
            }
        }

        for (var f = 0; f < _healthy.Flashers.Length; f++)
        {
            if (_healthy.Flashers[f].Link is >= 0 and var link && Math.Abs(Of(moment, link).Amps - moment.Amps[link]) > ShownAmps)
            {
                return true;
            }
        }

        return RelaysDecide(moment) || BoxesDecide(point.State, moment);
    }

    // True and false on either side; null where it is too near to be told.
    private static bool? Side(Turn turn, double volts, double amps)
    {
        amps = Math.Abs(amps);
        volts = Math.Abs(volts);
        return Math.Abs(amps - turn.Amps) <= Guard * turn.Amps || (turn.Volts > 0 && Math.Abs(volts - turn.Volts) <= Guard * turn.Volts) ? null
            : amps > turn.Amps && volts >= turn.Volts;
    }

    // Windings add up with their direction; electronics live only the right way round.
    private bool RelaysDecide(NearMoment moment)
    {
        foreach (var relay in _healthy.Relays)
        {
            var (before, now) = (0.0, 0.0);
            foreach (var coil in relay.Coils)
            {
                before += moment.Amps[coil];
                now += Of(moment, coil).Amps;
            }

            if (relay.Facts.Clicks)
            {
                (before, now) = (Math.Abs(before), Math.Abs(now));
            }

            if (Turns(before, now, relay.Facts.PullInAmps) || Turns(before, now, relay.Facts.DropOutAmps))
            {
                return true;
            }
        }

        return false;

        static bool Turns(double before, double now, double at) => before > at != now > at || Math.Abs(now - at) <= Guard * at;
    }

    private bool BoxesDecide(State state, NearMoment moment)
    {
        var moves = false;
        foreach (var n in _boxNodes)
        {
            var moved = _solve.Volts(moment.Rows[n]);
            _volts[n] = moment.Volts[n] + moved;
            moves |= !(Math.Abs(moved) <= ShownVolts);
        }

        for (var b = 0; moves && b < _healthy.Boxes.Length; b++)
        {
            var box = _healthy.Boxes[b];
            if (box.Facts.TotalLimitAmps is { } most && TotalAmps(box, moment) > (1 - Guard) * most)
            {
                return true;
            }

            if (Reading.Alive(box, _volts) != Reading.Alive(box, moment.Volts) || box.Facts.Data is not null && Math.Abs(_volts[box.Data.First] - moment.Volts[box.Data.First]) > MostOnDataVolts)
            {
                return true;
            }

            for (var i = 0; i < box.InputNodes.Length; i++)
            {
                var place = new InputPlace(b, i);
                if (Reading.Active(_healthy, place, state, _volts, _leads) != Reading.Active(_healthy, place, state, moment.Volts, _leads))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private double TotalAmps(Box box, NearMoment moment) => box.OutputLinks.Where(l => l >= 0).Sum(l => Math.Abs(Of(moment, l).Amps));

    private double Before(NearMoment moment, int link) => moment.Volts[_healthy.Links[link].From] - moment.Volts[_healthy.Links[link].To];

    private (double Volts, double Amps) Of(NearMoment moment, int link)
    {
        var moved = _solve.Volts(moment.Rows[_healthy.Links[link].From]) - _solve.Volts(moment.Rows[_healthy.Links[link].To]);
        return (Before(moment, link) + moved, _solve.Amps(link) ?? moment.Amps[link] + (moment.Siemens[link] * moved));
    }

    private bool Shows(NearMoment moment)
    {
        foreach (var l in _seenLinks)
        {
            var (volts, amps) = Of(moment, l);
            if (!(Math.Abs(amps - moment.Amps[l]) <= ShownAmps + (ShownShare * Math.Abs(amps)))
                || !(Math.Abs(volts - Before(moment, l)) <= ShownVolts + (ShownShare * Math.Abs(volts))))
            {
                return true;
            }
        }

        foreach (var n in _lightNodes)
        {
            var row = moment.Rows[n];
            var volts = moment.Volts[n] + _solve.Volts(row);
            if (_solve.HangsWith(row) || !(Math.Abs(volts - moment.Volts[n]) <= ShownVolts))
            {
                return true;
            }

            if (Math.Abs(volts) > ShownVolts
                && !(Math.Abs(Meter.Shows(volts, _solve.OhmsToReference(row)) - Meter.Shows(moment.Volts[n], moment.Ohms(row, row))) <= ShownVolts))
            {
                return true;
            }
        }

        return false;
    }
}
