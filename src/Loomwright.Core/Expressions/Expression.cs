using System.Collections.Immutable;

namespace Loomwright.Expressions;

/// <summary>
/// A condition in the small language of <c>when</c>, <c>awake</c> and <c>works</c>. A value: two equal texts give equal expressions.
/// The names in it are inputs of a load controller (<c>when</c>, <c>awake</c>) or controls of the bike (<c>works</c>).
/// </summary>
public abstract record Expression
{
    private Expression()
    {
    }

    /// <summary>The conditions directly inside this one, left to right.</summary>
    public ImmutableArray<Expression> Inner => this switch
    {
        Not e => [e.Term],
        And e => [e.Left, e.Right],
        Or e => [e.Left, e.Right],
        Latching e => [e.Term, .. e.Until],
        Pressed e => [e.Term],
        AtPress e => [e.Term],
        Blinking e => [e.Term],
        AtMost e => [e.Term],
        Delayed e => [e.Term],
        Dimmed e => [e.Term],
        _ => [],
    };

    /// <summary>Every input or control named in it, in the order written, each as often as it is named.</summary>
    public IEnumerable<string> NamesUsed()
    {
        var own = this switch
        {
            Named e => [e.Name],
            Is e => [e.Control],
            _ => ImmutableArray<string>.Empty,
        };
        return Inner.SelectMany(e => e.NamesUsed()).Concat(own);
    }

    /// <summary>The text that reads back as this condition, with no bracket more than needed.</summary>
    public sealed override string ToString() => Writer.Write(this);

    /// <summary>True while the named input is active or the named two-position control is away from rest.</summary>
    public sealed record Named(string Name) : Expression;

    /// <summary>True while the control is in that position.</summary>
    public sealed record Is(string Control, string Position) : Expression;

    /// <summary>True while the term is not.</summary>
    public sealed record Not(Expression Term) : Expression;

    /// <summary>True while both are.</summary>
    public sealed record And(Expression Left, Expression Right) : Expression;

    /// <summary>True while either is.</summary>
    public sealed record Or(Expression Left, Expression Right) : Expression;

    /// <summary>True at all times.</summary>
    public sealed record Always : Expression;

    /// <summary>Set at the press of the term; ended by the press of any of <paramref name="Until"/> or after the time. The same press both sets and ends: it toggles.</summary>
    /// <param name="Until">Each a <see cref="Named"/> or an <see cref="Is"/>.</param>
    public sealed record Latching(Expression Term, ImmutableArray<Expression> Until, TimeSpan? After) : Expression
    {
        public bool Equals(Latching? other) => other is not null && Term == other.Term && Until.SequenceEqual(other.Until) && After == other.After;

        public override int GetHashCode() => HashCode.Combine(Term, After);
    }

    /// <summary>True from the moment the term has been active without a break for the time.</summary>
    public sealed record Pressed(Expression Term, TimeSpan For) : Expression;

    /// <summary>True only at the instant the term becomes active.</summary>
    public sealed record AtPress(Expression Term) : Expression;

    /// <summary>Goes on and off while the term is active.</summary>
    public sealed record Blinking(Expression Term) : Expression;

    /// <summary>True while the term is, but no longer than the time at a stretch.</summary>
    public sealed record AtMost(Expression Term, TimeSpan Time) : Expression;

    /// <summary>True once the term has been active for the time; false at once when it ends.</summary>
    public sealed record Delayed(Expression Term, TimeSpan Time) : Expression;

    /// <summary>While the term is active, on for this share of the time, faster than the eye sees (0…1).</summary>
    public sealed record Dimmed(Expression Term, double Share) : Expression;
}
