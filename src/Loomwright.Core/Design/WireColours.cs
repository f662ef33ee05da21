using Loomwright.Text;

namespace Loomwright.Design;

/// <summary>
/// The letters for wire colours: IEC 60757 codes and the older German letters of vehicle diagrams (from memory, not checked
/// against a copy; base colour first). Capitals do not matter, the stroke between two colours may be left out.
/// </summary>
public static class WireColours
{
    private static readonly (string Word, string Iec, string German)[] Table =
    [
        ("black", "BK", "sw"),
        ("brown", "BN", "br"),
        ("red", "RD", "rt"),
        ("orange", "OG", "or"),
        ("yellow", "YE", "ge"),
        ("green", "GN", "gn"),
        ("blue", "BU", "bl"),
        ("violet", "VT", "vi"),
        ("grey", "GY", "gr"),
        ("white", "WH", "ws"),
        ("pink", "PK", "rs"),
        ("gold", "GD", ""),
        ("turquoise", "TQ", "tk"),
        ("silver", "SR", ""),
    ];

    /// <summary>The colour of a code as written, or null when it is none.</summary>
    public static WireColour? Read(string written)
    {
        var code = string.Concat(written.Where(c => !char.IsWhiteSpace(c)));
        var (first, second) = code.Split('/') switch
        {
            [{ Length: 4 } both] => (both[..2], both[2..]),
            [var one] => (one, null),
            [var one, var two] => (one, two),
            _ => ("", null),
        };
        var tracer = second is null ? null : Letters(second);
        return Letters(first) is { } ground && (second is null || tracer is not null) ? new WireColour(ground, tracer) : null;
    }

    /// <summary>How a code is taken that could be misread: German <c>bl</c> is blue and <c>gr</c> grey. Null when the code is plain.</summary>
    public static (string Code, string Taken, string Not)? CouldBeMisread(string written)
    {
        var pairs = written.Replace("/", "", StringComparison.Ordinal).ToLowerInvariant().Where(c => !char.IsWhiteSpace(c)).Chunk(2).Select(c => new string(c)).ToList();
        return pairs.Contains("bl") ? ("bl", "blue (BU)", "black (BK)") : pairs.Contains("gr") ? ("gr", "grey (GY)", "green (GN)") : null;
    }

    /// <summary>The colour in words: <c>green with a white tracer</c>.</summary>
    public static string InWords(WireColour colour) =>
        colour.Tracer is null ? Word(colour.Base) : $"{Word(colour.Base)} with a {Word(colour.Tracer)} tracer";

    /// <summary>The codes one may have meant: by the English word, else all of them.</summary>
    public static string Suggest(string written)
    {
        var words = written.Split(['/', ' ', '-'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var codes = words.Select(w => Table.FirstOrDefault(t => Names.Same(t.Word, w)).Iec).ToList();
        return codes.Count is 1 or 2 && codes.TrueForAll(c => c is not null) ? string.Join('/', codes) : "one of " + string.Join(", ", Table.Select(t => t.Iec));
    }

    private static string? Letters(string code)
    {
        foreach (var (_, iec, german) in Table)
        {
            if (string.Equals(iec, code, StringComparison.OrdinalIgnoreCase) || (german.Length > 0 && string.Equals(german, code, StringComparison.OrdinalIgnoreCase)))
            {
                return iec;
            }
        }

        return null;
    }

    private static string Word(string iec) => Table.First(t => t.Iec == iec).Word;
}
