using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Loomwright.Expressions;
using Loomwright.Network;
using Loomwright.Parts;

namespace Loomwright.Simulation;

/// <summary>
/// Puts a state on the network and solves it. One solver for the life of the wiring; the arrays show the last solve.
/// What is dimmed goes on and off faster than anything else here changes: every moment of that is solved with all
/// dimmed outputs going on together, and the answer is the mean over the moments (docs/models/dimming.md).
/// </summary>
internal sealed partial class Electrics
{
    private const int MostRounds = 30;
    private const double SmallChange = 1e-7;

    private readonly Wiring _wiring;
    private readonly Lazy<Solver> _whole;
    private readonly Curve[] _settled;
    private readonly int[] _changing;
    private readonly int[] _nodeOf;
    private readonly int[] _branchOf;
    private readonly int[] _nodes;
    private readonly int[] _links;
    private readonly List<double> _ends = [];
    private readonly List<double[]> _moments = [];
    private int _momentsKnown;
    private readonly Solved? _known;
    private readonly List<ulong> _configuration = [];
    private Picture _shown;
    private bool _afresh;
    private (State State, bool Between, bool[]? ColdNow)? _last;

    /// <param name="wiring">What is solved.</param>
    /// <param name="known">Where configurations solved before are kept, or null to solve each time.</param>
    /// <param name="near">Operating points of a wiring that differs little, or of this one, which are then kept there; or null.</param>
    public Electrics(Wiring wiring, Solved? known = null, Near? near = null)
    {
        _wiring = wiring;
        _known = known;
        _near = near;
        _edits = near is null || near.Healthy == wiring ? null : Edits.Between(near.Healthy, wiring);
        _keeps = near?.Healthy == wiring;
        _nearSolve = near is null ? null : new NearSolve();
        _whole = new(() => new Solver(known?.Circuit.Circuit ?? wiring.Circuit()));
        _nodeOf = known?.Circuit.NodeOf ?? [.. Enumerable.Range(0, wiring.NodeCount)];
        _branchOf = known?.Circuit.BranchOf ?? [.. Enumerable.Range(0, wiring.Links.Length)];
        _nodes = known?.Nodes ?? _nodeOf;
        _links = known?.Told ?? _branchOf;
        _settled = new Curve[wiring.Links.Length];
        _changing = [.. Solved.VaryingOf(wiring).Union(Enumerable.Range(0, wiring.Links.Length).Where(l => wiring.Links[l].Curve is Filament))];
        _shown = Picture.Empty(wiring);
    }

    /// <summary>Mean potential of each node.</summary>
    public double[] Volts => _shown.Volts;

    /// <summary>Mean current of each link.</summary>
    public double[] Amps => _shown.Amps;

    /// <summary>Mean square of the voltage across each link: what heats it.</summary>
    public double[] SquareVolts => _shown.SquareVolts;

    /// <summary>Largest current sum left at any node in any moment.</summary>
    public double ResidualAmps { get; set; }

    /// <summary>Which nodes nothing holds, in the last moment solved.</summary>
    public ReadOnlySpan<bool> Floating => Whole.Floating;

    private Solver Whole => _whole.Value;

    /// <summary>How many operating points were found so far.</summary>
    public int Solves { get; private set; }

    /// <summary>Makes the next solve start from nothing, so that its last digit does not depend on what was solved before.</summary>
    public void StartAfresh() => _afresh = true;

    /// <summary>Solves a state.</summary>
    /// <param name="state">What is switched how.</param>
    /// <param name="between">True for the off-phase of what blinks.</param>
    /// <param name="coldNow">Links to take with their cold curves, or null for all warm.</param>
    /// <returns>False when the network found no answer.</returns>
    public bool Solve(State state, bool between, bool[]? coldNow = null)
    {
        FindMoments(state, between);
        _last = (state, between, coldNow);
        _lastFound = null;
        return _near is not null ? (_keeps ? Keep(_near, state, between, coldNow) : SolveNear(_near, state, between, coldNow))
            : _known is null ? SolveMoments(state, between, coldNow)
            : Recall(_known, state, between, coldNow);
    }

    /// <summary>The circuits solved last, one for each moment with its share of the time; where something is dimmed, filaments as the resistances they settled at.</summary>
    public IEnumerable<(double Share, Circuit Circuit)> Circuits()
    {
        var start = 0.0;
        foreach (var end in _last is null ? [] : _ends)
        {
            var (state, between, coldNow) = _last!.Value;
            yield return (end - start, new Circuit(_wiring.NodeCount,
                [.. _wiring.Links.Select((link, l) => new Branch(link.From, link.To, CurveOf(l, state, between, start, coldNow, filaments: _ends.Count > 1)))]));
            start = end;
        }
    }

    /// <summary>The picture solved last.</summary>
    public Picture Copy() => _lastFound?.Picture ?? new([.. Volts], [.. Amps], [.. SquareVolts], ResidualAmps);

    private bool Recall(Solved known, State state, bool between, bool[]? coldNow)
    {
        Name(known.Varying, _wiring.Links, state, between, coldNow);
        var configuration = CollectionsMarshal.AsSpan(_configuration);
        if (!known.TryFind(configuration, out var picture))
        {
            StartAfresh();
            picture = known.Keep(configuration, SolveMoments(state, between, coldNow) ? this : null);
            Array.Fill(Volts, double.NaN);
            Array.Fill(Amps, double.NaN);
            Array.Fill(SquareVolts, double.NaN);
        }

        picture?.LayOut(this);
        return picture is not null;
    }

    // Two states are one configuration when every link has the same curve in every moment: two bits a link.
    private void Name(int[] varying, ImmutableArray<Link> links, State state, bool between, bool[]? coldNow)
    {
        _configuration.Clear();
        var start = 0.0;
        foreach (var end in _ends)
        {
            _configuration.Add(BitConverter.DoubleToUInt64Bits(end));
            var (word, bit) = (0ul, 0);
            foreach (var l in varying)
            {
                var link = links[l];
                var curve = CurveOf(link, l, state, between, start, coldNow, heated: null);
                word |= (ReferenceEquals(curve, link.Curve) ? 1ul : ReferenceEquals(curve, link.Cold) ? 2ul : ReferenceEquals(curve, link.Off) ? 3ul : 0ul) << bit;
                bit += 2;
                if (bit == 64)
                {
                    _configuration.Add(word);
                    (word, bit) = (0, 0);
                }
            }

            _configuration.Add(word);
            start = end;
        }
    }

    // Begins near an operating point of another wiring where there is one.
    private bool SolveMoments(State state, bool between, bool[]? coldNow, NearPoint? near = null)
    {
        _momentsKnown = 0;
        foreach (var moment in near?.Moments ?? [])
        {
            Keep(_momentsKnown, moment.Volts);
        }

        if (_ends.Count == 1)
        {
            return Mean(state, between, coldNow, filaments: false);
        }

        for (var l = 0; l < _settled.Length; l++)
        {
            _settled[l] = _wiring.Links[l].Curve;
        }

        // Each round leaves a steady part of the change before: what the next one would still change is known without it.
        var before = 0.0;
        for (var round = 0; round < MostRounds; round++)
        {
            if (!Mean(state, between, coldNow, filaments: true))
            {
                return false;
            }

            var change = HeatFilaments(_settled);
            var part = round < 2 ? 1 : Math.Min(1, change / before);
            if (change * part <= SmallChange)
            {
                return true;
            }

            before = change;
        }

        return true;
    }

    // The moments end where a dimmed output goes off; the last ends with the period.
    private void FindMoments(State state, bool between)
    {
        _ends.Clear();
        for (var b = 0; b < state.Boxes.Length; b++)
        {
            var box = state.Boxes[b];
            for (var o = 0; o < box.Commands.Length; o++)
            {
                var share = Share(box.Drive(o), between);
                if (share is > 0 and < 1 && !_ends.Contains(share))
                {
                    _ends.Add(share);
                }
            }
        }

        _ends.Sort();
        _ends.Add(1);
    }

    private static double Share(Level level, bool between) => between ? level.ShareBetween : level.Share;

    private bool Mean(State state, bool between, bool[]? coldNow, bool filaments)
    {
        Array.Clear(Volts);
        Array.Clear(Amps);
        Array.Clear(SquareVolts);
        ResidualAmps = 0;
        _kept.Clear();
        var start = 0.0;
        for (var moment = 0; moment < _ends.Count; moment++)
        {
            foreach (var l in _changing)
            {
                Whole.SetCurve(_branchOf[l], CurveOf(l, state, between, start, coldNow, filaments));
            }

            // A later round finds each moment close to where the round before left it.
            if ((moment < _momentsKnown ? Whole.Solve(_moments[moment]) : Whole.Solve(warm: !_afresh)) is not Network.Outcome.Solved)
            {
                return false;
            }

            _afresh = false;
            Solves++;
            if (_keepsMoments)
            {
                _kept.Add(new NearMoment(Whole, start, _ends[moment] - start, [.. Enumerable.Range(0, _wiring.Links.Length).Select(l => CurveOf(l, state, between, start, coldNow, filaments))]));
            }

            Add(_ends[moment] - start);
            start = _ends[moment];
            if (filaments)
            {
                Keep(moment, Whole.Potentials);
            }
        }

        return true;
    }

    private void Keep(int moment, ReadOnlySpan<double> volts)
    {
        if (moment == _moments.Count)
        {
            _moments.Add(new double[volts.Length]);
        }

        volts.CopyTo(_moments[moment]);
        _momentsKnown = Math.Max(_momentsKnown, moment + 1);
    }

    private void Add(double share)
    {
        var volts = Whole.Potentials;
        var amps = Whole.Amps;
        foreach (var n in _nodes)
        {
            Volts[n] += share * volts[_nodeOf[n]];
        }

        foreach (var l in _links)
        {
            var across = volts[_nodeOf[_wiring.Links[l].From]] - volts[_nodeOf[_wiring.Links[l].To]];
            Amps[l] += share * amps[_branchOf[l]];
            SquareVolts[l] += share * across * across;
        }

        ResidualAmps = Math.Max(ResidualAmps, Whole.ResidualAmps);
    }

    private Curve CurveOf(int place, State state, bool between, double moment, bool[]? coldNow, bool filaments) =>
        CurveOf(_wiring.Links[place], place, state, between, moment, coldNow, filaments ? _settled : null);

    private static Curve CurveOf(Link link, int place, State state, bool between, double moment, bool[]? coldNow, Curve[]? heated) =>
        Shut(link, state, between, moment)
        ?? (coldNow is not null && coldNow[place] && link.Cold is { } cold ? cold
        : heated is not null && link.Curve is Filament ? heated[place]
        : link.Curve);

    /// <summary>The curve of a link that a state keeps from conducting; null where it conducts.</summary>
    public static Curve? Shut(Link link, State state, bool between, double moment = 0) =>
        link.Fuse is { } fuse && state.Blown[fuse] ? Ohms.OpenContact
        : link.Switching is { } switching && !Conducts(switching, state, between, moment) ? link.Off
        : null;

    private static bool Conducts(Switching switching, State state, bool between, double moment) => switching switch
    {
        Switching.Contact c => c.Closed[state.Positions[c.Control]],
        Switching.Output o => Share(state.Boxes[o.Box].Drive(o.Place), between) > moment,
        Switching.Awake a => state.Boxes[a.Box].Awake,
        Switching.Relay r => state.Relays[r.Place] == r.WhenPulledIn,
        Switching.Flasher f => !between || !state.Flashers[f.Place],
        Switching.Fixed f => f.Closed,
        Switching.Both b => Conducts(b.One, state, between, moment) && Conducts(b.Other, state, between, moment),
        _ => false,
    };

    // A filament is too slow for the moments: in all of them it is the one resistance that its mean heat gives it. Returns
    // the largest change, as a part of the resistance; one that counts for nothing is not made.
    private double HeatFilaments(Curve[] heat)
    {
        var most = 0.0;
        for (var l = 0; l < heat.Length; l++)
        {
            if (_wiring.Links[l].Curve is not Filament filament)
            {
                continue;
            }

            // What is put right after can be less than nothing by its rounding.
            var volts = Math.Sqrt(Math.Max(0, SquareVolts[l]));
            var point = filament.At(volts);
            var ohms = volts > 1e-6 ? volts / point.Amps : 1 / point.Siemens;
            var change = heat[l] is Ohms before ? Math.Abs(before.ResistanceOhms - ohms) / ohms : 1;
            most = Math.Max(most, change);
            if (change > SmallChange)
            {
                heat[l] = new Ohms(ohms);
            }
        }

        return most;
    }
}

/// <summary>One solved electrical picture: potentials by node, currents and mean square voltages by link.</summary>
internal sealed record Picture(double[] Volts, double[] Amps, double[] SquareVolts, double ResidualAmps)
{
    /// <summary>Voltage across a link, from → to, as a meter shows it.</summary>
    public double Across(Link link) => Volts[link.From] - Volts[link.To];

    /// <summary>One to be filled.</summary>
    public static Picture Empty(Wiring wiring) => new(new double[wiring.NodeCount], new double[wiring.Links.Length], new double[wiring.Links.Length], 0);
}
