namespace Loomwright.Drawing;

/// <summary>The style sheet inside each drawing: tints as variables, one set by day and one for the dim theme. Every rule begins with the drawing's class, so that it stands on a page without touching it.</summary>
internal static class SvgStyle
{
    private const string Day = "--sheet:#fcfcfa;--ink:#17211d;--ink2:#46524c;--case:#17211d;--cell:#fff;--well:#eff2ee;--hair:#c8d0ca";
    private const string Dim = "--sheet:#1e2421;--ink:#e7e4d9;--ink2:#b5bab0;--case:#a9b2ab;--cell:#262d29;--well:#171c1a;--hair:#3a443e";

    private static readonly string[] Rules =
    [
        "text{fill:var(--ink)}",
        ".b{font-weight:700}",
        ".m{fill:var(--ink2)}",
        ".e{text-anchor:end}",
        ".c{text-anchor:middle}",
        ".stop{fill:var(--sheet);stroke:var(--ink);stroke-width:1.6}",
        ".l{paint-order:stroke;stroke:var(--sheet);stroke-width:2px;stroke-linejoin:round}",
        ".sheet{fill:var(--sheet)}",
        ".room{fill:var(--well)}",
        ".cell{fill:var(--cell);stroke:var(--ink);stroke-width:1.2}",
        ".point,.light,.pin,.none{fill:none}",
        ".point,.light,.pin{pointer-events:all}",
        ".s{fill:none;stroke:var(--ink);stroke-width:1.6;stroke-linecap:round;stroke-linejoin:round}",
        ".bar{stroke-width:3}",
        ".f{fill:var(--ink)}",
        ".glow{fill:var(--cell);stroke:var(--ink);stroke-width:1.4}",
        ".hair{stroke:var(--hair);fill:none}",
        ".w use{fill:none;stroke-linejoin:round}",
        ".h{stroke:var(--sheet)}",
        ".o{stroke:var(--case)}",
        ".k{stroke:var(--c,var(--sheet))}",
        ".t{stroke:var(--t);stroke-dasharray:9 6}",
        ".x{stroke:var(--case);stroke-dasharray:9 6}",
        ".w.q .k,.cell.q{stroke:var(--hair)}",
    ];

    public static string Sheet { get; } =
        $".loom{{{Tints(t => t.Day)}{Day};font-family:\"Liberation Sans Narrow\",\"Arial Narrow\",Arial,sans-serif;font-size:16px}}\n"
        + $".loom.dim{{{Tints(t => t.Dim)}{Dim}}}\n"
        + $"@media print{{.loom,.loom.dim{{{Tints(t => t.Day)}{Day.Replace("#fcfcfa", "#fff", StringComparison.Ordinal)}}}}}\n"
        + string.Concat(Rules.Select(r => $".loom {r.Replace(",.", ",.loom .", StringComparison.Ordinal)}")) + "\n"
        + string.Concat(Insulation.Tints.Select(t => $".loom .c-{t.Letters}{{--c:var(--{t.Letters})}}.loom .t-{t.Letters}{{--t:var(--{t.Letters})}}"));

    private static string Tints(Func<(string Letters, string Word, string Day, string Dim, int Lightness), string> of) =>
        string.Concat(Insulation.Tints.Select(t => $"--{t.Letters}:{of(t)};"));
}
