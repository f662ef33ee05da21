using Loomwright.Design;

namespace Loomwright.Drawing;

/// <summary>The sheets a loom can be drawn on.</summary>
public static class Sheets
{
    /// <summary>Arrangements looked at when nobody says how many.</summary>
    public const int UsualTrials = 6000;

    /// <summary>The whole bike on one sheet.</summary>
    public static Scene Overview(Loom loom, int trials = UsualTrials) => Drawing.Overview.Of(loom, trials) with { Pages = loom.Functions.Length + 1 };

    /// <summary>One function as numbered lines: the current of each load, what asks for it, what wakes the box. Its page is its place among the functions.</summary>
    public static Scene Function(Loom loom, Function function) =>
        FunctionSheet.Of(loom, function) with { Page = loom.Functions.IndexOf(function) + 2, Pages = loom.Functions.Length + 1 };
}
