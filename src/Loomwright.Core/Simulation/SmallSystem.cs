namespace Loomwright.Simulation;

/// <summary>A few linear equations, solved by elimination with the largest pivot of each column first. Not for two threads at once.</summary>
/// <param name="most">The most equations there can be.</param>
internal sealed class SmallSystem(int most)
{
    // A smaller pivot hangs on an open contact alone.
    private const double LeastPivot = 1e-11;

    private readonly double[] _matrix = new double[most * most];
    private readonly double[] _given = new double[most];
    private readonly int[] _order = new int[most];

    /// <summary>The right-hand sides, then the answer.</summary>
    public double[] Right { get; } = new double[most];

    /// <summary>A coefficient; overwritten by <see cref="Factor"/>.</summary>
    public double this[int row, int column]
    {
        set => _matrix[(row * most) + column] = value;
    }

    /// <summary>Solves the first <paramref name="count"/> equations; false when a pivot is too small to be told from none.</summary>
    /// <param name="count">How many.</param>
    /// <param name="bound">True to go on with the least pivot instead: the answer is a bound then.</param>
    public bool Solve(int count, bool bound)
    {
        if (!Factor(count, bound))
        {
            return false;
        }

        Substitute(count);
        return true;
    }

    /// <summary>Makes ready to <see cref="Substitute"/> any number of right-hand sides; the rest as for <see cref="Solve"/>.</summary>
    public bool Factor(int count, bool bound)
    {
        for (var k = 0; k < count; k++)
        {
            _order[k] = k;
        }

        for (var k = 0; k < count; k++)
        {
            var best = k;
            for (var r = k + 1; r < count; r++)
            {
                best = Math.Abs(_matrix[(r * most) + k]) > Math.Abs(_matrix[(best * most) + k]) ? r : best;
            }

            if (Math.Abs(_matrix[(best * most) + k]) < LeastPivot)
            {
                if (!bound)
                {
                    return false;
                }

                _matrix[(best * most) + k] = LeastPivot;
            }

            if (best != k)
            {
                (_order[k], _order[best]) = (_order[best], _order[k]);
                for (var c = 0; c < count; c++)
                {
                    (_matrix[(k * most) + c], _matrix[(best * most) + c]) = (_matrix[(best * most) + c], _matrix[(k * most) + c]);
                }
            }

            Eliminate(k, count);
        }

        return true;
    }

    /// <summary>Turns the right-hand sides into the answer.</summary>
    public void Substitute(int count)
    {
        var right = Right.AsSpan(0, count);
        right.CopyTo(_given);
        for (var k = 0; k < right.Length; k++)
        {
            var row = Row(k, k);
            var left = _given[_order[k]];
            for (var c = 0; c < row.Length; c++)
            {
                left -= row[c] * right[c];
            }

            right[k] = left;
        }

        for (var k = right.Length - 1; k >= 0; k--)
        {
            var row = Row(k, count);
            var left = right[k];
            for (var c = k + 1; c < row.Length; c++)
            {
                left -= row[c] * right[c];
            }

            right[k] = left / row[k];
        }
    }

    // What each row takes of the pivot's stays where it was.
    private void Eliminate(int k, int count)
    {
        var pivot = Row(k, count);
        for (var r = k + 1; r < count; r++)
        {
            var row = Row(r, count);
            var share = row[k] / pivot[k];
            row[k] = share;
            if (share == 0)
            {
                continue;
            }

            for (var c = k + 1; c < row.Length; c++)
            {
                row[c] -= share * pivot[c];
            }
        }
    }

    private Span<double> Row(int row, int count) => _matrix.AsSpan(row * most, count);
}
