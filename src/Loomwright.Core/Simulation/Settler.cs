using System.Collections.Immutable;
using Loomwright.Network;

namespace Loomwright.Simulation;

/// <summary>How a state ended.</summary>
/// <param name="State">Where it came to rest; where it does not, the moment of the round with the least switched on.</param>
/// <param name="Outcome">How.</param>
/// <param name="Pictures">The electrical picture there; a second one between the flashes of what blinks. Where it never rests: with the most and with the least switched on. Empty when the network found no answer.</param>
/// <param name="Events">What happened on the way, in words.</param>
internal sealed record Settled(State State, Outcome Outcome, ImmutableArray<Picture> Pictures, ImmutableArray<string> Events)
{
    /// <summary>How often what is seen (by its place in the wiring) goes on and off in a minute; null for what does not. Empty when nothing blinks.</summary>
    public ImmutableArray<double?> FlashesPerMinute { get; init; } = [];
}

/// <summary>
/// Settles states of one wiring: solve; trips; the one protector that opens soonest; relays; inputs and outputs; until
/// nothing changes. The answer depends on the state alone. Not for two threads at once.
/// </summary>
internal sealed class Settler
{
    private const int MostRounds = 2000;
    private const int MostUndecided = 4;
    private const int MostRelayRounds = 20;
    private static readonly ImmutableDictionary<InputPlace, bool> AsRead = ImmutableDictionary<InputPlace, bool>.Empty;

    private readonly Wiring _wiring;
    private readonly Electrics _electrics;
    private readonly Stepping _stepping;
    private bool _unseen;

    /// <param name="wiring">What is settled.</param>
    public Settler(Wiring wiring)
        : this(wiring, coldStart: true)
    {
    }

    internal Settler(Wiring wiring, bool coldStart, Solved? known = null, Near? near = null)
    {
        _wiring = wiring;
        _electrics = new Electrics(wiring, known, near);
        _stepping = new Stepping(wiring, _electrics, coldStart, known);
    }

    /// <summary>Settles a state.</summary>
    public Settled Settle(State start) => Settle(PressedIn(start), AsRead);

    // A breaker's button closes it once; what is still too much opens it again although the button is held.
    private State PressedIn(State state)
    {
        for (var f = 0; f < _wiring.Fuses.Length; f++)
        {
            if (_wiring.Fuses[f].Button is { } button && state.Positions[button.Control] == button.Pressed)
            {
                state = state with { Blown = state.Blown.With(f, false) };
            }
        }

        return state;
    }

    /// <summary>Settles a state and keeps no pictures of how it ends.</summary>
    internal Settled SettleUnseen(State start)
    {
        _unseen = true;
        var settled = Settle(start, AsRead);
        _unseen = false;
        return settled;
    }

    /// <summary>What a state that has come to rest looks like.</summary>
    internal Settled AtRest(State state) => _electrics.Solve(state, between: false) ? Rest(state, []) : new Settled(state, Outcome.Unsolved, [], []);

    /// <summary>Solves a settled state once more and says which nodes nothing holds.</summary>
    internal bool[]? Floating(State state, bool between) => (between ? Between(state) : _electrics.Solve(state, between)) ? [.. _electrics.Floating] : null;

    /// <summary>Solves a settled state once more and says how many ohms some nodes have to the reference; false when the network finds no answer.</summary>
    internal bool OhmsToReference(State state, ReadOnlySpan<int> nodes, Span<double> ohms)
    {
        var solved = _electrics.Solve(state, between: false);
        if (solved)
        {
            _electrics.OhmsToReference(nodes, ohms);
        }

        return solved;
    }

    /// <summary>Operating points found so far.</summary>
    internal int Solves => _electrics.Solves;

    /// <summary>Solves a settled state once more and gives the circuits that makes, each with its share of the time; null when the network finds no answer.</summary>
    internal ImmutableArray<(double Share, Circuit Circuit)>? Circuits(State state, bool between) => (between ? Between(state) : _electrics.Solve(state, between)) ? [.. _electrics.Circuits()] : null;

    private Settled Settle(State start, ImmutableDictionary<InputPlace, bool> readAs)
    {
        var happenings = new List<Happening>();
        var (state, outcome, undecided) = Run(start, Order.Together, readAs, happenings);
        if (undecided is { } input)
        {
            return EitherWay(start, input, readAs);
        }

        switch (outcome)
        {
            case Outcome.Settled:
                return Rest(state, happenings);
            case Outcome.SwitchesByItself:
                // One thing at a time: if that comes to rest, only the order made it go round.
                var race = Run(start, Order.FirstFirst, readAs, []).Outcome == Outcome.Settled
                    || Run(start, Order.LastFirst, readAs, []).Outcome == Outcome.Settled;
                return Round(state, race ? Outcome.Race : outcome, readAs, happenings);
            default:
                return new Settled(state, outcome, [], Words(happenings));
        }
    }

    private (State State, Outcome Outcome, InputPlace? Undecided) Run(
        State start, Order order, ImmutableDictionary<InputPlace, bool> readAs, List<Happening> happenings)
    {
        var seen = new List<State>();
        var state = start;
        _electrics.StartAfresh();
        while (!seen.Contains(state))
        {
            seen.Add(state);
            if (seen.Count > MostRounds || !_electrics.Solve(state, between: false))
            {
                return (state, Outcome.Unsolved, null);
            }

            if (_stepping.Next(state, order, readAs, happenings, out var undecided) is not { } next)
            {
                return (state, undecided is null ? Outcome.Unsolved : Outcome.UndefinedInput, undecided);
            }

            if (next == state)
            {
                return (state, Outcome.Settled, null);
            }

            state = next;
        }

        return (state, Outcome.SwitchesByItself, null);
    }

    private Settled Rest(State state, List<Happening> happenings)
    {
        ImmutableArray<Picture> pictures = _unseen ? [] : [_electrics.Copy()];
        if (!Blinks(state))
        {
            return new Settled(state, Outcome.Settled, pictures, Words(happenings));
        }

        ImmutableArray<double?> perMinute = _unseen ? [] : Rates.Of(_wiring, state, pictures[0], alone => Between(alone) ? _electrics.Copy() : null);
        if (!Between(state))
        {
            return new Settled(state, Outcome.Unsolved, [], Words(happenings));
        }

        var outcome = Outcome.Settled;
        if (_stepping.Disagrees(state) is { } follower)
        {
            var box = _wiring.Boxes[follower.Box];
            happenings.Add(new Happening.FollowsBlinking(box.Part, box.Facts.Inputs[follower.Input].Name));
            outcome = Outcome.SwitchesByItself;
        }

        return new Settled(state, outcome, _unseen ? [] : pictures.Add(_electrics.Copy()), Words(happenings)) { FlashesPerMinute = perMinute };
    }

    // Solves the state between its flashes; relays are quick enough to follow.
    private bool Between(State state)
    {
        for (var round = 0; round < MostRelayRounds; round++)
        {
            if (!_electrics.Solve(state, between: true))
            {
                return false;
            }

            var relays = _stepping.Relays(state);
            if (relays == state.Relays)
            {
                return true;
            }

            state = state with { Relays = relays };
        }

        return true;
    }

    // Goes round once more from a state on the round and keeps the two ends of it.
    private Settled Round(State start, Outcome outcome, ImmutableDictionary<InputPlace, bool> readAs, List<Happening> before)
    {
        var during = new List<Happening>();
        var round = new List<(State State, Picture Picture, int On)>();
        var state = start;
        do
        {
            _electrics.Solve(state, between: false);
            var next = _stepping.Next(state, Order.Together, readAs, during, out _) ?? start;

            // Copied after the step: where cold lamps pull the supply down, that is the picture there is.
            round.Add((state, _electrics.Copy(), OutputsOn(state)));
            state = next;
        }
        while (state != start && round.Count < MostRounds);

        var most = round.MaxBy(r => r.On);
        var least = round.MinBy(r => r.On);
        var resets = during.OfType<Happening.Reset>().Select(r => r.Again).Distinct();
        var words = during.OfType<Happening.Reset>().Any() ? resets : [new Happening.GoesRound(Changing(round[0].State, [.. round.Select(r => r.State)])).ToString()];
        return new Settled(least.State, outcome, [most.Picture, least.Picture], [.. Words(before.Where(h => h is not Happening.Reset && !during.Contains(h))), .. words]);
    }

    private Settled EitherWay(State start, InputPlace input, ImmutableDictionary<InputPlace, bool> readAs)
    {
        var box = _wiring.Boxes[input.Box];
        var facts = box.Facts.Inputs[input.Input];
        var unclear = new Happening.Undecided(box.Part, facts.Name, Reading.InputVolts(box, input.Input, _electrics.Volts), facts.LowVolts, facts.HighVolts);
        if (readAs.Count >= MostUndecided)
        {
            return new Settled(start, Outcome.UndefinedInput, [_electrics.Copy()], [unclear.ToString()]);
        }

        var active = Settle(start, readAs.Add(input, true));
        var idle = Settle(start, readAs.Add(input, false));
        return SameEnd(active, idle)
            ? idle
            : idle with { Outcome = Outcome.UndefinedInput, Events = [.. idle.Events.Where(e => e != unclear.ToString()), unclear.ToString()] };
    }

    private static bool SameEnd(Settled a, Settled b) =>
        a.Outcome == b.Outcome && a.State.Blown == b.State.Blown && a.State.Relays == b.State.Relays && a.State.Flashers == b.State.Flashers
        && a.State.Boxes.AsSpan().ToArray().Zip(b.State.Boxes.AsSpan().ToArray()).All(p => p.First.Awake == p.Second.Awake && p.First.Commands == p.Second.Commands && p.First.Tripped == p.Second.Tripped);

    private static bool Blinks(State state)
    {
        if (state.Flashers.AsSpan().Contains(true))
        {
            return true;
        }

        foreach (var box in state.Boxes.AsSpan())
        {
            for (var o = 0; o < box.Commands.Length; o++)
            {
                if (box.Drive(o).Blinks)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static int OutputsOn(State state) =>
        state.Boxes.AsSpan().ToArray().Sum(b => Enumerable.Range(0, b.Commands.Length).Count(o => b.Drive(o).On)) + state.Relays.AsSpan().Count(true);

    private string Changing(State first, IReadOnlyList<State> round)
    {
        var relays = Enumerable.Range(0, _wiring.Relays.Length).Where(r => round.Any(s => s.Relays[r] != first.Relays[r])).Select(r => _wiring.Relays[r].Part);
        var changing = from state in round
                       from b in Enumerable.Range(0, _wiring.Boxes.Length)
                       from o in Enumerable.Range(0, _wiring.Boxes[b].OutputLinks.Length)
                       where state.Boxes[b].Drive(o) != first.Boxes[b].Drive(o)
                       select $"{_wiring.Boxes[b].Part} {_wiring.Boxes[b].Facts.Outputs[o].Terminal} ({_wiring.Boxes[b].Facts.Outputs[o].Name})";
        return string.Join(" and ", changing.Concat(relays).Distinct(StringComparer.Ordinal).DefaultIfEmpty("the bike"));
    }

    private static ImmutableArray<string> Words(IEnumerable<Happening> happenings) =>
        happenings is List<Happening> { Count: 0 } ? [] : [.. happenings.Select(h => h.ToString()).Distinct(StringComparer.Ordinal)];
}
