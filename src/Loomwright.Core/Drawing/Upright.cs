namespace Loomwright.Drawing;

/// <summary>An upright run in a channel, with the side each of its ends leaves to.</summary>
/// <param name="Line">Index of the line.</param>
/// <param name="AtA">True when it is the run at the line's first end.</param>
internal readonly record struct Upright(int Line, bool AtA, double Y1, bool Right1, double Y2, bool Right2)
{
    // Two level runs nearer than this, one from each side, would lie on each other.
    private const double Clash = 8;
    private const int ClashPrice = 1000;

    private double Top => Math.Min(Y1, Y2);

    private double Bottom => Math.Max(Y1, Y2);

    /// <summary>Whether the two need different tracks.</summary>
    public bool Meets(Upright other, double near) => Top < other.Bottom + near && other.Top < Bottom + near;

    /// <summary>Crossings, and clashes, when this stands left of the other.</summary>
    public int PriceLeftOf(Upright other) =>
        (Right1 ? other.Cut(Y1) : 0) + (Right2 ? other.Cut(Y2) : 0)
        + (other.Right1 ? 0 : Cut(other.Y1)) + (other.Right2 ? 0 : Cut(other.Y2))
        + Clashes(Y1, Right1, other) + Clashes(Y2, Right2, other);

    private int Cut(double y) => Top < y && y < Bottom ? 1 : 0;

    private static int Clashes(double y, bool right, Upright other) => !right ? 0
        : (!other.Right1 && Math.Abs(y - other.Y1) < Clash ? ClashPrice : 0) + (!other.Right2 && Math.Abs(y - other.Y2) < Clash ? ClashPrice : 0);
}
