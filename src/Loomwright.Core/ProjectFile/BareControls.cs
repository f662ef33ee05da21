using System.Diagnostics;
using Loomwright.Expressions;

namespace Loomwright.ProjectFile;

/// <summary>Finds the controls a condition names without a position.</summary>
internal static class BareControls
{
    /// <summary>Every name that stands alone where a level or a press is asked.</summary>
    public static IEnumerable<string> In(Expression condition) => condition switch
    {
        Expression.Named named => [named.Name],
        Expression.Is or Expression.Always => [],
        Expression.Not not => In(not.Term),
        Expression.And both => In(both.Left).Concat(In(both.Right)),
        Expression.Or either => In(either.Left).Concat(In(either.Right)),
        Expression.Latching latching => In(latching.Term).Concat(latching.Until.SelectMany(In)),
        Expression.Pressed pressed => In(pressed.Term),
        Expression.AtPress press => In(press.Term),
        Expression.Blinking blinking => In(blinking.Term),
        Expression.AtMost most => In(most.Term),
        Expression.Delayed delayed => In(delayed.Term),
        Expression.Dimmed dimmed => In(dimmed.Term),
        _ => throw new UnreachableException(),
    };
}
