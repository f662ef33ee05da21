using Loomwright.Expressions;
using Loomwright.Simulation;

namespace Loomwright.Walk;

/// <summary>What led from one state to the next.</summary>
/// <param name="Control">Place of the control moved; <see cref="RanOut"/> for a time that ran out, <see cref="Power"/> for the supply connected.</param>
/// <param name="To">Its new position, or which of the times that could run out.</param>
internal readonly record struct Event(int Control, int To)
{
    public const int RanOut = -1;
    public const int Power = -2;
}

/// <summary>Where an event led. What cannot be gone on from has a failure.</summary>
internal readonly record struct Reached(Event By, Setting Setting, Inside Inside, Failure? Failure);

/// <summary>Goes on from single states. One for each thread; what they find out they share.</summary>
internal sealed class Worker(Shared shared)
{
    private readonly Settler _settler = new(shared.Wiring, coldStart: true, shared.Solved);
    private readonly Judge _judge = new(shared.Wiring, shared.Promises, new Watching(shared.Wiring, new Settler(shared.Wiring, coldStart: true, shared.Solved), shared.FullLight));

    /// <summary>The bike with its supply just connected.</summary>
    public Reached Start(Setting setting) =>
        Settle(new Event(Event.Power, 0), setting, shared.Start with { Positions = setting.Positions }, shared.Promises.After(shared.Promises.Fresh, setting, Event.Power));

    /// <summary>Everything that can happen next, except what leads where the trail has been. Gives how many events there were.</summary>
    public int GoOn(int from, Trail trail, List<Reached> reached)
    {
        var (setting, inside) = trail[from];
        var moves = setting.Moves(shared.Settings);
        foreach (var move in moves)
        {
            var promised = shared.Promises.After(inside.Promised, move.To, move.Control);
            Keep(Settle(new Event(move.Control, move.Position), move.To, inside.State with { Positions = move.To.Positions }, promised), trail, reached);
        }

        var ends = shared.Timers.Next(inside);
        for (var e = 0; e < ends.Length; e++)
        {
            var ended = shared.Timers.Ended(inside, ends[e]);
            var promised = shared.Promises.After(ended.Promised, setting, Event.RanOut);
            Keep(Settle(new Event(Event.RanOut, e), setting, ended.State with { Positions = setting.Positions }, promised), trail, reached);
        }

        return moves.Length + ends.Length;
    }

    /// <summary>What a state is worth that the trail has come to.</summary>
    public Verdict Judge(int place, Trail trail)
    {
        var (setting, inside) = trail[place];
        return _judge.Of(setting, inside, _settler.AtRest(inside.State with { Positions = setting.Positions }));
    }

    private static void Keep(Reached found, Trail trail, List<Reached> reached)
    {
        if (found.Failure is not null || !trail.Knows(found.Setting, found.Inside))
        {
            reached.Add(found);
        }
    }

    private Reached Settle(Event by, Setting setting, State state, Row<Memory> promised)
    {
        var settled = _settler.SettleUnseen(state);
        var inside = shared.Same(shared.Timers.Ranked(new Inside(settled.State, promised)));
        return new Reached(by, setting, inside, Failure.Of(shared.Wiring, settled));
    }
}
