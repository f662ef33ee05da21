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
        .. loom.Places.Where(p => loom.Parts.Any(q => Names.Same(q.Place ?? "", p.Key))).Select(p => new SheetName(SheetKind.Place, p.Key, p.Name)),
        .. PlugSheet.All(loom).Select(p => new SheetName(SheetKind.Plug, p.Name, p.Name)),
    ];

    /// <summary>One sheet, or null when the loom has nothing of that name.</summary>
    /// <param name="trials">How many arrangements to look at where the sheet is arranged by a search.</param>
    public static Scene? One(Loom loom, SheetKind kind, string of, int trials = UsualTrials)
    {
        var all = Of(loom);
        if (kind == SheetKind.Wire)
        {
            return loom.Wire(of) is { } wire ? FollowSheet.Of(loom, wire, One(loom, SheetKind.Overview, "", trials)!) : null;
        }

        if (all.FirstOrDefault(s => s.Kind == kind && Names.Same(s.Of, of)) is not { } sheet)
        {
            return null;
        }

        var scene = kind switch
        {
            SheetKind.Overview => Drawing.Overview.Of(loom, trials),
            SheetKind.Function => FunctionSheet.Of(loom, loom.Functions.First(f => Names.Same(f.Name, of))),
            SheetKind.Place => PlaceSheet.Of(loom, loom.Places.First(p => Names.Same(p.Key, of)), PageOfPlace, trials),
            SheetKind.Plug => Plug(),
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };
        var page = all.IndexOf(sheet) + 1;
        return scene with { Id = string.Create(CultureInfo.InvariantCulture, $"s{page}"), Page = page, Pages = all.Length };

        int? PageOfPlace(Part part) => all.Select((s, i) => (s, i)).Where(s => s.s.Kind == SheetKind.Place && Names.Same(s.s.Of, part.Place ?? "")).Select(s => (int?)s.i + 1).FirstOrDefault();

        Scene Plug()
        {
            var (part, plug, name) = PlugSheet.All(loom).First(p => Names.Same(p.Name, of));
            return PlugSheet.Of(loom, part, plug, name);
        }
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
