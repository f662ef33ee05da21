using System.Collections.Immutable;

namespace Loomwright.Answers;

/// <summary>Rows of a frame under the owner's names, in file order.</summary>
internal static class Keyed
{
    public static IReadOnlyDictionary<string, TTo> By<TFrom, TTo>(ImmutableArray<TFrom> rows, Func<TFrom, string> name, Func<TFrom, TTo> value)
    {
        var keyed = new OrderedDictionary<string, TTo>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            keyed[name(row)] = value(row);
        }

        return keyed;
    }
}
