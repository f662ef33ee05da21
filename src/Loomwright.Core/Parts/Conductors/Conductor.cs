using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>How a size was found in the tables.</summary>
public enum SizeMatch
{
    /// <summary>It is a row of the table.</summary>
    Listed,

    /// <summary>No table lists it; the next thinner row stands for it, so its resistance is rather too high.</summary>
    NextThinner,

    /// <summary>It is thinner than every row; the thinnest stands for it, so its resistance is too low.</summary>
    ThinnerThanAll,
}

/// <summary>The conductor that stands for a size: which table, which row, and whether it is that size at all.</summary>
public sealed record Conductor(ConductorTable Table, ConductorRow Row, SizeMatch Match)
{
    // People write 0.52 mm² for 20 AWG (0.518), and files carry rounded figures.
    private const double SameShare = 0.005;

    /// <summary>Looks a size up: vehicle cable first, then wire gauge, then the next thinner vehicle cable.</summary>
    public static Conductor For(CrossSection size)
    {
        foreach (var table in new[] { ConductorTable.Iso6722, ConductorTable.Awg })
        {
            if (table.Rows.FirstOrDefault(r => Math.Abs(r.Size.SquareMillimetres - size.SquareMillimetres) <= SameShare * r.Size.SquareMillimetres) is { } listed)
            {
                return new Conductor(table, listed, SizeMatch.Listed);
            }
        }

        foreach (var table in new[] { ConductorTable.Iso6722, ConductorTable.Awg })
        {
            if (table.Rows.LastOrDefault(r => r.Size.SquareMillimetres < size.SquareMillimetres) is { } thinner)
            {
                return new Conductor(table, thinner, SizeMatch.NextThinner);
            }
        }

        return new Conductor(ConductorTable.Awg, ConductorTable.Awg.Rows[0], SizeMatch.ThinnerThanAll);
    }

    /// <summary>Of a length at a conductor temperature: R = R20 · length · (1 + α·(T − 20 °C)).</summary>
    public Resistance Of(Length length, Temperature temperature) =>
        new(Row.OhmsPerMetre * length.Metres * (1 + (Table.PerKelvin * (temperature.Celsius - 20))));

    /// <summary>Of a length of that size at a conductor temperature, without its ends.</summary>
    public static Resistance Resistance(CrossSection size, Length length, Temperature temperature) => For(size).Of(length, temperature);
}
