using System.Runtime.InteropServices;
using Loomwright.Text;

namespace Loomwright.Expressions;

/// <summary>One step through the conditions: reads the cells of the step before, writes those of this one. Every term is visited, so that none misses a press.</summary>
internal sealed class Pass(Memory before, int cellCount, Func<string, bool> active, Func<string, string> positionOf)
{
    private readonly bool _fresh = before.Cells.IsEmpty;
    private readonly Cell[] _next = new Cell[cellCount];
    private int _taken;

    public Memory Next()
    {
        // A memory of nothing to remember is fresh for ever; one with cells is fresh once.
        return _next.Length == 0 ? Memory.Fresh : new Memory(ImmutableCollectionsMarshal.AsImmutableArray(_next));
    }

    public Level LevelOf(Expression expression) => expression switch
    {
        Expression.Named e => Level.Steady(active(e.Name)),
        Expression.Is e => Level.Steady(positionOf(e.Control) is var position && (position == e.Position || Names.Same(position, e.Position))),
        Expression.Not e => Level.Steady(!LevelOf(e.Term).On),
        Expression.And e => LevelOf(e.Left).And(LevelOf(e.Right)),
        Expression.Or e => LevelOf(e.Left).Or(LevelOf(e.Right)),
        Expression.Always => Level.Full,
        Expression.Latching e => Latching(e),
        Expression.Pressed e => Pressed(e),
        Expression.AtPress e => AtPress(e),
        Expression.Blinking e => LevelOf(e.Term) with { ShareBetween = 0 },
        Expression.AtMost e => Stretch(e.Term, e.Time, onAfter: false),
        Expression.Delayed e => Stretch(e.Term, e.Time, onAfter: true),
        Expression.Dimmed e => Dimmed(e),
        _ => throw new InvalidOperationException("a condition of no known form"),
    };

    private Level Latching(Expression.Latching e)
    {
        var own = Take(1 + e.Until.Length);
        var press = Press(own, LevelOf(e.Term).On);
        var ended = false;
        for (var i = 0; i < e.Until.Length; i++)
        {
            ended |= Press(own + 1 + i, LevelOf(e.Until[i]).On);
        }

        var (set, left) = Held(own);
        if (left == TimeSpan.Zero)
        {
            (set, left) = (false, null);
        }

        if (set && ended)
        {
            (set, left) = (false, null);
        }
        else if (press)
        {
            (set, left) = (true, e.After);
        }

        return Keep(own, set, left);
    }

    private Level Pressed(Expression.Pressed e)
    {
        var own = Take(1);
        var on = LevelOf(e.Term).On;
        var press = Press(own, on);
        var (set, left) = !on ? (false, null) : press ? (false, e.For) : Held(own);
        return left == TimeSpan.Zero ? Keep(own, true, null) : Keep(own, set, left);
    }

    private Level AtPress(Expression.AtPress e)
    {
        var own = Take(1);
        return Level.Steady(Press(own, LevelOf(e.Term).On));
    }

    private Level Stretch(Expression term, TimeSpan time, bool onAfter)
    {
        var own = Take(1);
        var level = LevelOf(term);
        var starts = level.On && !Was(own);
        Press(own, level.On);
        var (set, left) = !level.On ? (false, null) : starts ? (false, time) : Held(own);
        if (left == TimeSpan.Zero)
        {
            (set, left) = (true, null);
        }

        Keep(own, set, left);
        return set == onAfter ? level : default;
    }

    private Level Dimmed(Expression.Dimmed e)
    {
        var level = LevelOf(e.Term);
        return new Level(level.Share * e.Share, level.ShareBetween * e.Share);
    }

    private int Take(int count)
    {
        var first = _taken;
        _taken += count;
        return first;
    }

    private bool Was(int cell) => !_fresh && before.Cells[cell].Was;

    private (bool Set, TimeSpan? Left) Held(int cell) => _fresh ? (false, null) : (before.Cells[cell].Set, before.Cells[cell].Left);

    private bool Press(int cell, bool on)
    {
        _next[cell] = _next[cell] with { Was = on };
        return on && !_fresh && !Was(cell);
    }

    private Level Keep(int cell, bool set, TimeSpan? left)
    {
        _next[cell] = _next[cell] with { Set = set, Left = left };
        return Level.Steady(set);
    }
}
