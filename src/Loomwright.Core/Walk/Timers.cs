using System.Collections.Immutable;
using Loomwright.Expressions;
using Loomwright.Simulation;

namespace Loomwright.Walk;

/// <summary>A time that can be the next to run out: how long it was, its age in the order of starting, whose it is.</summary>
internal readonly record struct RunOut(TimeSpan Whole, long Age, string Names);

/// <summary>
/// Time without a clock. A hand may come at any moment, so of a running timer only two things matter: how long it was,
/// and which other timers were started before it, with it and after it. That order is kept in what is left of each
/// timer, one tick for each rank: equal states then differ in nothing that decides what can happen next.
/// </summary>
/// <remarks>
/// Timers of one length started together run out together (a box's 45 s and the promise's 45 s). One that is no longer
/// than another and was started no later runs out first. Every other order is walked, though a hand that kept to the
/// clock could not bring about each of them: what needs a time to run out is told as depending on timing.
/// </remarks>
internal sealed class Timers(Wiring wiring, Promises promises, Solved known)
{
    /// <summary>The same with the ages of all running timers told by rank, the youngest 1.</summary>
    public Inside Ranked(Inside inside)
    {
        if (!inside.Runs)
        {
            return inside;
        }

        ImmutableArray<long> ages = [.. All(inside).Select(t => Age(t.Timer)).Distinct().Order()];
        return ages[0] == 1 && ages[^1] == ages.Length ? inside : Retimed(inside, t => t.Whole - TimeSpan.FromTicks(ages.IndexOf(Age(t)) + 1));
    }

    /// <summary>What can run out next, in a stable order.</summary>
    public ImmutableArray<RunOut> Next(Inside inside) => inside.RunOuts ??= inside.Runs ? Find(inside) : [];

    /// <summary>The same with that time at its end, not yet settled.</summary>
    public Inside Ended(Inside inside, RunOut next) =>
        Retimed(inside, t => t.Whole == next.Whole && Age(t) == next.Age ? TimeSpan.Zero : t.Left);

    private ImmutableArray<RunOut> Find(Inside inside)
    {
        var groups = All(inside)
            .GroupBy(t => (t.Timer.Whole, Age: Age(t.Timer)))
            .OrderBy(g => g.Key.Whole).ThenByDescending(g => g.Key.Age)
            .Select(g => new RunOut(g.Key.Whole, g.Key.Age, string.Join(" and ", g.Select(t => t.Name).Distinct(StringComparer.Ordinal))))
            .ToList();
        return [.. groups.Where(late => !groups.Any(early => early != late && early.Whole <= late.Whole && early.Age >= late.Age))];
    }

    private static long Age(Running timer) => (timer.Whole - timer.Left).Ticks;

    private IEnumerable<(Running Timer, string Name)> All(Inside inside)
    {
        for (var b = 0; b < wiring.Boxes.Length; b++)
        {
            if (!inside.State.Boxes[b].Memory.Runs)
            {
                continue;
            }

            var box = wiring.Boxes[b];
            foreach (var timer in box.Rules.Running(inside.State.Boxes[b].Memory))
            {
                yield return (timer, timer.Root == 0 ? box.Part : box.Facts.Outputs[timer.Root - 1].Name);
            }
        }

        for (var slot = 0; slot < inside.Promised.Length; slot++)
        {
            if (!inside.Promised[slot].Runs)
            {
                continue;
            }

            var (rule, function) = promises.At(slot);
            foreach (var timer in rule.Running(inside.Promised[slot]))
            {
                yield return (timer, function);
            }
        }
    }

    private Inside Retimed(Inside inside, Func<Running, TimeSpan> left)
    {
        var boxes = inside.State.Boxes;
        for (var b = 0; b < boxes.Length; b++)
        {
            if (boxes[b].Memory.Runs)
            {
                boxes = boxes.With(b, known.Same(boxes[b] with { Memory = wiring.Boxes[b].Rules.Retimed(boxes[b].Memory, left) }));
            }
        }

        var promised = inside.Promised;
        for (var slot = 0; slot < promised.Length; slot++)
        {
            promised = promised[slot].Runs ? promised.With(slot, promises.At(slot).Rule.Retimed(promised[slot], left)) : promised;
        }

        return new Inside(inside.State with { Boxes = boxes }, promised);
    }
}
