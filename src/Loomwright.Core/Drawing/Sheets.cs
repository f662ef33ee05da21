using Loomwright.Design;

namespace Loomwright.Drawing;

/// <summary>The sheets a loom can be drawn on.</summary>
public static class Sheets
{
    /// <summary>Arrangements looked at when nobody says how many.</summary>
    public const int UsualTrials = 3000;

    /// <summary>The whole bike on one sheet.</summary>
    public static Scene Overview(Loom loom, int trials = UsualTrials) => Drawing.Overview.Of(loom, trials);
}
