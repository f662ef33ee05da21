using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.Expressions;

/// <summary>Reads a condition by recursive descent, one method a rule of the grammar in docs/expressions.md. The first problem ends the reading.</summary>
internal sealed class Grammar(Scanner text, Vocabulary names, Func<string, IReadOnlyCollection<string>>? positionsOf)
{
    private const int DeepestNesting = 60;
    private static readonly TimeSpan LongestTime = TimeSpan.FromHours(24);
    private int _depth;

    /// <summary>Where reading stopped and why; null while all is well.</summary>
    public (int Offset, string What, string Cure)? Problem { get; private set; }

    public Expression Whole()
    {
        if (text.AtEnd)
        {
            return Fail("the condition is empty", $"name what it depends on, or write always{names.Declared}");
        }

        var whole = Alternative();
        return Problem is not null || text.AtEnd ? whole : LeftOver();
    }

    private Expression Alternative()
    {
        if (++_depth > DeepestNesting)
        {
            return Fail($"more than {DeepestNesting} brackets stand inside each other", "take out the brackets that change nothing");
        }

        var left = Conjunction();
        while (Problem is null && text.Take("or"))
        {
            left = new Expression.Or(left, Conjunction());
        }

        _depth--;
        return left;
    }

    private Expression Conjunction()
    {
        var left = Negation();
        while (Problem is null && text.Take("and"))
        {
            left = new Expression.And(left, Negation());
        }

        return left;
    }

    private Expression Negation()
    {
        var nots = 0;
        while (!names.IsAt(text) && text.Take("not"))
        {
            nots++;
        }

        if (nots > DeepestNesting)
        {
            return Fail($"more than {DeepestNesting} times not", "two of them cancel");
        }

        var term = Term();
        while (nots-- > 0)
        {
            term = new Expression.Not(term);
        }

        return term;
    }

    private Expression Term()
    {
        var term = Primary();
        while (Problem is null)
        {
            if (text.Take("at most"))
            {
                term = new Expression.AtMost(term, Duration());
            }
            else if (text.Take("delayed"))
            {
                term = new Expression.Delayed(term, Duration());
            }
            else if (text.Take("at"))
            {
                term = new Expression.Dimmed(term, Share());
            }
            else
            {
                break;
            }
        }

        return term;
    }

    private Expression Primary()
    {
        if (++_depth > DeepestNesting)
        {
            return Fail($"more than {DeepestNesting} forms stand inside each other", "take out those that change nothing");
        }

        var primary = Form();
        _depth--;
        return primary;
    }

    private Expression Form()
    {
        if (names.Take(text) is { } name)
        {
            return NamedOrIs(name);
        }

        return text.Take("(") ? Closed(Alternative())
            : text.Take("always") ? new Expression.Always()
            : text.Take("at press of") ? new Expression.AtPress(Primary())
            : text.Take("blinking") ? new Expression.Blinking(Primary())
            : text.Take("latching") ? Latching()
            : text.Take("pressed") ? Pressed()
            : Unknown();
    }

    private Expression NamedOrIs(string name) => text.Take("is") ? Position(name) : new Expression.Named(name);

    private Expression Position(string control)
    {
        if (positionsOf is null)
        {
            var words = text.Words(Vocabulary.Joining, take: true);
            return words.Length > 0
                ? new Expression.Is(control, words)
                : Fail($"after {control} is, a position is missing", $"write the position, as in {control} is riding");
        }

        var positions = new Vocabulary(positionsOf(control), mayBeWords: true);
        if (positions.Take(text) is { } position)
        {
            return new Expression.Is(control, position);
        }

        var written = text.Words(Vocabulary.Joining);
        return positions.IsEmpty
            ? Fail($"{control} has no positions that can be named here", $"write {control} alone: it is true while {control} is active")
            : Fail($"{control} has no position {written}", positions.Suggestion(written, "its positions are"));
    }

    private Expression Latching()
    {
        if (!text.Take("("))
        {
            return Fail("after latching a bracket is missing", "write latching(left; until left, 45 s)");
        }

        var term = Alternative();
        if (Problem is null && !(text.Take(";") && text.Take("until")))
        {
            return Fail("a latching condition does not say what ends it", "write ; until and a name or a time, as in latching(left; until left, 45 s)");
        }

        var until = ImmutableArray.CreateBuilder<Expression>();
        TimeSpan? after = null;
        while (Problem is null)
        {
            if (names.Take(text) is { } name)
            {
                until.Add(NamedOrIs(name));
            }
            else if (after is null && SeesNumber())
            {
                after = Duration();
            }
            else
            {
                return after is not null && SeesNumber() ? Fail("two times end the same latch", "keep the shorter one") : Unknown();
            }

            if (Problem is not null || !text.Take(","))
            {
                break;
            }
        }

        return Closed(new Expression.Latching(term, until.ToImmutable(), after));
    }

    private Expression Pressed()
    {
        if (!text.Take("("))
        {
            return Fail("after pressed a bracket is missing", "write pressed(start button, 1.5 s)");
        }

        var term = Alternative();
        if (Problem is null && !text.Take(","))
        {
            return Fail("pressed does not say for how long", "write a comma and a time, as in pressed(start button, 1.5 s)");
        }

        return Closed(new Expression.Pressed(term, Duration()));
    }

    private Expression Closed(Expression inner) =>
        Problem is not null || text.Take(")") ? inner : text.AtEnd ? Fail("a bracket is not closed", "write ) where it ends") : LeftOver();

    private TimeSpan Duration()
    {
        if (Problem is not null)
        {
            return default;
        }

        var start = text.At;
        if (text.TakeTicks() is { } ticks and >= TimeSpan.TicksPerMillisecond && ticks <= LongestTime.Ticks)
        {
            return TimeSpan.FromTicks((long)ticks);
        }

        var known = text.At > start;
        text.At = start;
        _ = known
            ? Fail("the time is not between 1 ms and 24 hours", "write a time in between, as in 1.5 s")
            : Fail("a time with its unit is missing", "write a number with ms, s or min, as in 1.5 s");
        return default;
    }

    private double Share()
    {
        var start = text.At;
        if (text.TakeNumber() is { } percent and > 0 and <= 100 && text.Take("%"))
        {
            return (double)(percent / 100);
        }

        text.At = start;
        Fail("after at, a share from above 0 % to 100 % is missing", "write it as in key at 20 %; for a time write at most 10 s");
        return 1;
    }

    private bool SeesNumber()
    {
        var start = text.At;
        var found = text.TakeNumber() is not null;
        text.At = start;
        return found;
    }

    private Expression.Always Unknown()
    {
        if (text.AtEnd)
        {
            return Fail("the condition breaks off", "say what comes next: a name, a bracket, or nothing after the last term");
        }

        var written = text.Words(Vocabulary.Joining);
        return written.Length > 0
            ? Fail($"{written} is not declared here", names.Suggestion(written, "declared are"))
            : text.Sees("not")
                ? Fail("not stands where a single term belongs", "put it in brackets: (not …)")
                : Fail("a name is missing here", $"write a name before this{names.Declared}");
    }

    private Expression.Always LeftOver()
    {
        var written = text.Words([]);
        return written.Length > 0
            ? Fail($"{written} does not continue the condition", "join two terms with and or or, and check the name before it")
            : Fail("this sign does not belong here", "take it out, or check the brackets");
    }

    private Expression.Always Fail(string what, string cure)
    {
        _ = text.AtEnd;
        Problem ??= (text.Offset, what, cure);
        return new Expression.Always();
    }
}
