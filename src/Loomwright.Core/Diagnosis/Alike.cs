using System.Collections.Immutable;
using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>Which hypotheses have the same repair, and which look alike after which stimulus but for lit and dim: equal numbers by their places.</summary>
internal sealed class Alike
{
    private readonly FaultTable _table;
    private readonly Numbers<string> _repairs;
    private readonly Numbers<ImmutableArray<byte>>[] _looks;

    private Alike(FaultTable table, Numbers<string> repairs, Numbers<ImmutableArray<byte>>[] looks) => (_table, _repairs, _looks) = (table, repairs, looks);

    /// <summary>Number of each one's repair.</summary>
    public int[] Repairs => _repairs.Each;

    /// <summary>Of these.</summary>
    public static Alike Of(FaultTable table, ImmutableArray<Hypothesis> all)
    {
        var none = new Numbers<ImmutableArray<byte>>([], new(SameSigns.Comparer));
        return new Alike(table, new([], new(StringComparer.Ordinal)), [.. table.Stimuli.Select(_ => none)]).With(all);
    }

    /// <summary>The same with more behind them.</summary>
    public Alike With(ImmutableArray<Hypothesis> more) => new(
        _table,
        _repairs.With(more.Select(h => h.Repair)),
        [.. _looks.Select((n, s) => n.With(more.Select(h => Undimmed(h.Looks[s].Signs))))]);

    /// <summary>Number of each one's look after a stimulus, dim and lit taken for the same.</summary>
    public int[] Looks(int stimulus) => _looks[stimulus].Each;

    private ImmutableArray<byte> Undimmed(ImmutableArray<byte> signs) =>
        [.. signs.Select((sign, o) => _table.Observables[o].LightPower is not null && (Symbol)sign == Symbol.Dim ? (byte)Symbol.Lit : sign)];

    private sealed record Numbers<T>(int[] Each, Dictionary<T, int> Known)
        where T : notnull
    {
        public Numbers<T> With(IEnumerable<T> more)
        {
            var known = new Dictionary<T, int>(Known, Known.Comparer);
            return new([.. Each, .. more.Select(m => known.TryGetValue(m, out var number) ? number : known[m] = known.Count)], known);
        }
    }

    private sealed class SameSigns : IEqualityComparer<ImmutableArray<byte>>
    {
        public static readonly SameSigns Comparer = new();

        public bool Equals(ImmutableArray<byte> x, ImmutableArray<byte> y) => x == y || x.AsSpan().SequenceEqual(y.AsSpan());

        public int GetHashCode(ImmutableArray<byte> signs)
        {
            var hash = default(HashCode);
            hash.AddBytes(signs.AsSpan());
            return hash.ToHashCode();
        }
    }
}
