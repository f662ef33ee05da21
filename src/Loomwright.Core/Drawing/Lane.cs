namespace Loomwright.Drawing;

/// <summary>A level run in the spine from one channel to another.</summary>
internal readonly record struct Lane(int Line, Lane.Turn Left, Lane.Turn Right)
{
    /// <summary>Where a lane is left.</summary>
    /// <param name="Channel">In which channel.</param>
    /// <param name="Up">Toward a plate above the spine.</param>
    /// <param name="FacesRight">The plate stands left of the channel.</param>
    /// <param name="Y">Height of the row it goes to, good for comparing within one side of the spine.</param>
    internal readonly record struct Turn(int Channel, bool Up, bool FacesRight, double Y);

    /// <summary>Whether the two need different heights.</summary>
    public bool Meets(Lane other) => Left.Channel <= other.Right.Channel && other.Left.Channel <= Right.Channel;

    /// <summary>Crossings that cannot be avoided when this lies above the other.</summary>
    public int PriceAbove(Lane other) => OfTurn(Left, goesRight: true, other) + OfTurn(Right, goesRight: false, other) + Under(other.Left) + Under(other.Right);

    // My downward turn cuts what passes below me.
    private static int OfTurn(Turn mine, bool goesRight, Lane below)
    {
        var price = !mine.Up && below.Left.Channel < mine.Channel && mine.Channel < below.Right.Channel ? 1 : 0;
        if (mine.Channel == below.Left.Channel && goesRight)
        {
            price += Beside(mine, below.Left, goesRight);
        }

        if (mine.Channel == below.Right.Channel && !goesRight)
        {
            price += Beside(mine, below.Right, goesRight);
        }

        return price;
    }

    // The other's upward turn cuts me where I pass.
    private int Under(Turn below) => below.Up && Left.Channel < below.Channel && below.Channel < Right.Channel ? 1 : 0;

    // Both leave in one channel and go on the same way. Going through keeps their order, turning back reverses it.
    private static int Beside(Turn upper, Turn lower, bool goesRight)
    {
        if (upper.Up != lower.Up)
        {
            return upper.Up ? 0 : 1;
        }

        if (upper.FacesRight != lower.FacesRight)
        {
            return 0;
        }

        var goesThrough = upper.FacesRight == goesRight;
        return goesThrough == (upper.Y < lower.Y) ? 0 : 1;
    }
}
