using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Text;

namespace Loomwright.Faults;

/// <summary>Who built the loom; scales how often things go wrong.</summary>
public enum Builder
{
    First,
    Practised,
}

/// <summary>What is known of how the loom was made.</summary>
public sealed record PriorOptions
{
    public Builder Builder { get; init; }

    /// <summary>Crimped with plain pliers rather than a tool made for the terminal.</summary>
    public bool PlainPliers { get; init; }

    /// <summary>Names of the parts that served before.</summary>
    public ImmutableArray<string> Reused { get; init; } = [];
}

/// <summary>One row of the table of priors.</summary>
/// <param name="Kind">What goes wrong.</param>
/// <param name="Per">What counts as one opportunity for it.</param>
/// <param name="Prior">Probability per opportunity.</param>
/// <param name="First">Times for a first builder …</param>
/// <param name="Practised">… and for a practised one.</param>
/// <param name="PlainPliers">Times when crimped with plain pliers.</param>
/// <param name="Basis">Where the figure comes from.</param>
public sealed record PriorRow(string Kind, string Per, double Prior, double First, double Practised, double PlainPliers, string Basis)
{
    /// <summary>Probability per opportunity for that builder and those pliers.</summary>
    public double For(PriorOptions options) =>
        Prior * (options.Builder == Builder.First ? First : Practised) * (options.PlainPliers ? PlainPliers : 1);
}

/// <summary>How often each thing goes wrong: the one table, <c>Faults/Priors.csv</c>.</summary>
public static class Priors
{
    private const string Resource = "faults/Priors.csv";

    /// <summary>Every row, in file order.</summary>
    public static ImmutableArray<PriorRow> Table { get; } = Read();

    private static readonly FrozenDictionary<string, PriorRow> ByKind = Table.ToFrozenDictionary(r => r.Kind, Names.Comparer);

    /// <summary>The row of that kind; the table must have it.</summary>
    public static PriorRow Row(string kind) => ByKind[kind];

    private static ImmutableArray<PriorRow> Read()
    {
        using var stream = typeof(Priors).Assembly.GetManifestResourceStream(Resource)!;
        using var reader = new StreamReader(stream);
        return [.. reader.ReadToEnd().ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(Row)];

        // The last field is quoted and may hold commas.
        static PriorRow Row(string line)
        {
            var fields = line.Split(',', 7);
            double Number(int place) => double.Parse(fields[place], CultureInfo.InvariantCulture);
            return new PriorRow(fields[0], fields[1], Number(2), Number(3), Number(4), Number(5), fields[6].Trim('"'));
        }
    }
}
