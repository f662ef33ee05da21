using System.Collections.Immutable;

namespace Loomwright.Expressions;

/// <summary>
/// Follows conditions through time. Presses are what the step before did not see and this one does, so one step is one
/// look at the inputs: call <see cref="Step"/> once for every time the network was solved. docs/expressions.md says what each form does.
/// </summary>
internal sealed class Evaluator
{
    private readonly ImmutableArray<Expression> _roots;
    private readonly ImmutableArray<CellUse> _uses;
    private readonly ImmutableArray<int> _ends;
    private readonly ImmutableArray<TimeSpan> _times;

    /// <summary>Follows these conditions together; their order is the order of the levels.</summary>
    public Evaluator(ImmutableArray<Expression> roots)
    {
        var uses = ImmutableArray.CreateBuilder<CellUse>();
        var times = ImmutableArray.CreateBuilder<TimeSpan>();
        var ends = ImmutableArray.CreateBuilder<int>(roots.Length);
        foreach (var root in roots)
        {
            Lay(root, uses, times);
            ends.Add(uses.Count);
        }

        _roots = roots;
        _uses = uses.ToImmutable();
        _times = times.ToImmutable();
        _ends = ends.ToImmutable();
    }

    /// <summary>One look at the inputs.</summary>
    /// <param name="now">What was remembered.</param>
    /// <param name="active">Whether the input of that name is active, or the control of that name away from rest.</param>
    /// <param name="positionOf">Where the control of that name stands.</param>
    /// <returns>A level for each condition, and what to remember for the next step.</returns>
    public (ImmutableArray<Level> Levels, Memory Next) Step(Memory now, Func<string, bool> active, Func<string, string> positionOf)
    {
        var pass = new Pass(now, _uses.Length, active, positionOf);
        var levels = ImmutableArray.CreateBuilder<Level>(_roots.Length);
        foreach (var root in _roots)
        {
            levels.Add(pass.LevelOf(root));
        }

        return (levels.MoveToImmutable(), pass.Next());
    }

    /// <summary>Lets time pass; a timer that runs out takes effect in the next <see cref="Step"/>.</summary>
    public static Memory Advance(Memory memory, TimeSpan time) =>
        time <= TimeSpan.Zero || NextTimer(memory) is null
            ? memory
            : new Memory([.. memory.Cells.Select(c => c.Left is { } left ? c with { Left = left > time ? left - time : TimeSpan.Zero } : c)]);

    /// <summary>How long until the next timer runs out; zero when one has and no step was made since; null when none runs.</summary>
    public static TimeSpan? NextTimer(Memory memory)
    {
        TimeSpan? next = null;
        foreach (var cell in memory.Cells)
        {
            if (cell.Left is { } left && (next is null || left < next))
            {
                next = left;
            }
        }

        return next;
    }

    /// <summary>What sleep leaves: no latch, no timer, but what the inputs were at the last step, so that the press that wakes still counts as a press.</summary>
    public Memory Forget(Memory memory) =>
        memory.Cells.IsEmpty
            ? memory
            : new Memory([.. memory.Cells.Select((c, i) => new Cell(c.Was && _uses[i] != CellUse.Stretch, false, null))]);

    /// <summary>Whether any latch of that condition is set.</summary>
    public bool Remembers(Memory memory, int rootIndex)
    {
        for (var i = rootIndex == 0 ? 0 : _ends[rootIndex - 1]; i < _ends[rootIndex] && i < memory.Cells.Length; i++)
        {
            if (_uses[i] == CellUse.Latch && memory.Cells[i].Set)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Every timer that runs.</summary>
    internal IEnumerable<Running> Running(Memory memory)
    {
        for (var i = 0; i < memory.Cells.Length; i++)
        {
            if (memory.Cells[i].Left is { } left)
            {
                yield return new Running(_ends.Count(end => end <= i), _times[i], left);
            }
        }
    }

    /// <summary>The same memory with what is left of each running timer put anew.</summary>
    internal Memory Retimed(Memory memory, Func<Running, TimeSpan> left) => memory.Runs
        ? new Memory([.. memory.Cells.Select((c, i) => c.Left is { } now ? c with { Left = left(new Running(_ends.Count(end => end <= i), _times[i], now)) } : c)])
        : memory;

    // The same order as Pass takes them in: a term's own cells before those of what is inside it.
    private static void Lay(Expression expression, ImmutableArray<CellUse>.Builder uses, ImmutableArray<TimeSpan>.Builder times)
    {
        switch (expression)
        {
            case Expression.Latching e:
                uses.Add(CellUse.Latch);
                uses.AddRange(Enumerable.Repeat(CellUse.Ender, e.Until.Length));
                times.Add(e.After ?? TimeSpan.Zero);
                break;
            case Expression.Pressed e:
                uses.Add(CellUse.Press);
                times.Add(e.For);
                break;
            case Expression.AtPress:
                uses.Add(CellUse.Press);
                break;
            case Expression.AtMost e:
                uses.Add(CellUse.Stretch);
                times.Add(e.Time);
                break;
            case Expression.Delayed e:
                uses.Add(CellUse.Stretch);
                times.Add(e.Time);
                break;
        }

        // A cell without a time of its own never runs.
        times.AddRange(Enumerable.Repeat(TimeSpan.Zero, uses.Count - times.Count));
        foreach (var inner in expression.Inner)
        {
            Lay(inner, uses, times);
        }
    }
}
