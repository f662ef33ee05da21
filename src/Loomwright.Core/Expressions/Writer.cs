using System.Globalization;

namespace Loomwright.Expressions;

/// <summary>Writes a condition so that it reads back equal.</summary>
internal static class Writer
{
    // How tightly a form holds together; a looser one inside a tighter one needs brackets.
    private const int Alternative = 0;
    private const int Conjunction = 1;
    private const int Negation = 2;
    private const int Term = 3;
    private const int Primary = 4;

    public static string Write(Expression expression) => Write(expression, Alternative);

    private static string Write(Expression expression, int within)
    {
        var (text, binds) = expression switch
        {
            Expression.Named e => (e.Name, Primary),
            Expression.Is e => ($"{e.Control} is {e.Position}", Primary),
            Expression.Not e => ($"not {Write(e.Term, Negation)}", Negation),
            Expression.And e => ($"{Write(e.Left, Conjunction)} and {Write(e.Right, Negation)}", Conjunction),
            Expression.Or e => ($"{Write(e.Left, Alternative)} or {Write(e.Right, Conjunction)}", Alternative),
            Expression.Always => ("always", Primary),
            Expression.Latching e => ($"latching({Write(e.Term, Alternative)}; until {string.Join(", ", Enders(e))})", Primary),
            Expression.Pressed e => ($"pressed({Write(e.Term, Alternative)}, {Seconds(e.For)})", Primary),
            Expression.AtPress e => ($"at press of {Write(e.Term, Primary)}", Primary),
            Expression.Blinking e => ($"blinking {Write(e.Term, Primary)}", Primary),
            Expression.AtMost e => ($"{Write(e.Term, Term)} at most {Seconds(e.Time)}", Term),
            Expression.Delayed e => ($"{Write(e.Term, Term)} delayed {Seconds(e.Time)}", Term),
            Expression.Dimmed e => ($"{Write(e.Term, Term)} at {Percent(e.Share)}", Term),
            _ => throw new InvalidOperationException("a condition of no known form"),
        };
        return binds < within ? $"({text})" : text;
    }

    private static IEnumerable<string> Enders(Expression.Latching e) => e.After is { } after ? e.Until.Select(u => Write(u)).Append(Seconds(after)) : e.Until.Select(u => Write(u));

    private static string Seconds(TimeSpan time) =>
        string.Create(CultureInfo.InvariantCulture, $"{(decimal)time.Ticks / TimeSpan.TicksPerSecond:0.#######} s");

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{(decimal)share * 100:0.############} %");
}
