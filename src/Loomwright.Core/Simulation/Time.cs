using Loomwright.Expressions;

namespace Loomwright.Simulation;

/// <summary>What a hand and the clock do to a state.</summary>
internal static class Time
{
    /// <summary>A bound on run-outs in one wait: rules that start each other anew could go on for ever.</summary>
    private const int MostRunOuts = 10_000;

    /// <summary>The state with one control moved, not yet settled.</summary>
    public static State Moved(State state, int control, int position) => state with { Positions = state.Positions.With(control, position) };

    /// <summary>How long until the next timer of any box runs out; null when none runs.</summary>
    public static TimeSpan? NextTimer(State state)
    {
        TimeSpan? next = null;
        foreach (var box in state.Boxes.AsSpan())
        {
            if (Evaluator.NextTimer(box.Memory) is { } left && (next is null || left < next))
            {
                next = left;
            }
        }

        return next;
    }

    /// <summary>Lets time pass: each run-out on the way settled in order, then what is left of the time.</summary>
    /// <returns>What settled, and how long after the start; the last at the end of the time.</returns>
    public static IEnumerable<(TimeSpan After, Settled Settled)> Pass(Settler settler, Settled from, TimeSpan time)
    {
        var (now, passed) = (from, TimeSpan.Zero);
        for (var runOuts = 0; runOuts < MostRunOuts && NextTimer(now.State) is { } next && passed + next < time; runOuts++)
        {
            passed += next;
            now = settler.Settle(Later(now.State, next));
            yield return (passed, now);
        }

        yield return (time, settler.Settle(Later(now.State, time - passed)));
    }

    private static State Later(State state, TimeSpan time) =>
        state with { Boxes = new Row<BoxState>([.. state.Boxes.AsSpan().ToArray().Select(b => b with { Memory = Evaluator.Advance(b.Memory, time) })]) };
}
