using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>The sheets a loom can be drawn on.</summary>
public static class Sheets
{
    /// <summary>Arrangements looked at when nobody says how many.</summary>
    public const int UsualTrials = 6000;

    /// <summary>All of them, in the order of their pages.</summary>
    public static ImmutableArray<SheetName> Of(Loom loom) =>
    [
        new(SheetKind.Overview, "", "the whole bike"),
        .. loom.Functions.Select(f => new SheetName(SheetKind.Function, f.Name, f.Name)),
    ];

    /// <summary>One sheet, or null when the loom has nothing of that name.</summary>
    /// <param name="trials">How many arrangements to look at where the sheet is arranged by a search.</param>
    public static Scene? One(Loom loom, SheetKind kind, string of, int trials = UsualTrials)
    {
        var all = Of(loom);
        if (all.FirstOrDefault(s => s.Kind == kind && Names.Same(s.Of, of)) is not { } sheet)
        {
            return null;
        }

        var scene = kind switch
        {
            SheetKind.Overview => Drawing.Overview.Of(loom, trials),
            _ => FunctionSheet.Of(loom, loom.Functions.First(f => Names.Same(f.Name, of))),
        };
        var page = all.IndexOf(sheet) + 1;
        return scene with { Id = string.Create(CultureInfo.InvariantCulture, $"s{page}"), Page = page, Pages = all.Length };
    }

    /// <summary>Where the boxes of the overview stand when it is arranged anew, whatever was moved by hand.</summary>
    public static Placing Arrange(Loom loom, int trials = UsualTrials) => Places.Arranged(loom, trials);

    /// <summary>The same with one box moved: its corner at a spot, or as near as no other box is in its way. Null when there is no such part.</summary>
    public static Placing? Move(Loom loom, string part, int x, int y, int trials = UsualTrials) => Places.Moved(loom, part, x, y, trials);

    /// <summary>The whole bike on one sheet.</summary>
    public static Scene Overview(Loom loom, int trials = UsualTrials) => One(loom, SheetKind.Overview, "", trials)!;

    /// <summary>One function as numbered lines: the current of each load, what asks for it, what wakes the box.</summary>
    public static Scene Function(Loom loom, Function function) => One(loom, SheetKind.Function, function.Name)!;
}
