namespace Loomwright.Simulation;

/// <summary>A few linear equations, solved by elimination with the largest pivot of each column first. Not for two threads at once.</summary>
/// <param name="most">The most equations there can be.</param>
internal sealed class SmallSystem(int most)
{
    // A smaller pivot hangs on an open contact alone.
    private const double LeastPivot = 1e-11;

    private readonly double[] _matrix = new double[most * most];

    /// <summary>The right-hand sides, then the answer.</summary>
    public double[] Right { get; } = new double[most];

    /// <summary>A coefficient; overwritten by <see cref="Solve"/>.</summary>
    public double this[int row, int column]
    {
        set => _matrix[(row * most) + column] = value;
    }

    /// <summary>Solves the first <paramref name="count"/> equations; false when a pivot is too small to be told from none.</summary>
    /// <param name="count">How many.</param>
    /// <param name="bound">True to go on with the least pivot instead: the answer is a bound then.</param>
    public bool Solve(int count, bool bound)
    {
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
                (Right[k], Right[best]) = (Right[best], Right[k]);
                for (var c = k; c < count; c++)
                {
                    (_matrix[(k * most) + c], _matrix[(best * most) + c]) = (_matrix[(best * most) + c], _matrix[(k * most) + c]);
                }
            }

            Eliminate(k, count);
        }

        for (var k = count - 1; k >= 0; k--)
        {
            var row = Row(k, count);
            var left = Right[k];
            for (var c = k + 1; c < row.Length; c++)
            {
                left -= row[c] * Right[c];
            }

            Right[k] = left / row[k];
        }

        return true;
    }

    private void Eliminate(int k, int count)
    {
        var pivot = Row(k, count);
        for (var r = k + 1; r < count; r++)
        {
            var row = Row(r, count);
            var share = row[k] / pivot[k];
            if (share == 0)
            {
                continue;
            }

            for (var c = k + 1; c < row.Length; c++)
            {
                row[c] -= share * pivot[c];
            }

            Right[r] -= share * Right[k];
        }
    }

    private Span<double> Row(int row, int count) => _matrix.AsSpan(row * most, count);
}
