using System.Numerics;
using System.Runtime.CompilerServices;

namespace Loomwright.Diagnosis;

/// <summary>Which readings a meter tells apart. Not for two threads at once.</summary>
internal sealed class ToldApart
{
    // Two readings further apart than this many spreads are told apart, if not by the share by which the battery may stand otherwise.
    private const double Apart = 2.5, BatteryDiffers = 0.04;

    // Finer than the least that is told apart; what is beyond the most is one reading.
    private const double Cell = 0.02, Most = 40.96;
    private const int Cells = (int)(2 * Most / Cell);

    private readonly ulong[] _filled = new ulong[Cells / 64];
    private readonly (double Low, double High)[] _ends = new (double, double)[Cells];
    private readonly int[] _group = new int[Cells];

    /// <summary>Numbers the readings from 0: those between which there is no gap that a meter shows get one number.</summary>
    /// <param name="volts">What each would read.</param>
    /// <param name="amps">What the supply delivers.</param>
    /// <param name="groups">Where the numbers are written.</param>
    /// <returns>How many numbers there are.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public int Number(ReadOnlySpan<double> volts, double amps, Span<int> groups)
    {
        for (var i = 0; i < volts.Length; i++)
        {
            var cell = CellOf(volts[i]);
            groups[i] = cell;
            ref var ends = ref _ends[cell];
            var (word, bit) = (cell >> 6, 1UL << cell);
            ends = (_filled[word] & bit) == 0 ? (volts[i], volts[i]) : (Math.Min(ends.Low, volts[i]), Math.Max(ends.High, volts[i]));
            _filled[word] |= bit;
        }

        var (group, last) = (-1, double.NegativeInfinity);
        for (var word = 0; word < _filled.Length; word++)
        {
            for (; _filled[word] != 0; _filled[word] &= _filled[word] - 1)
            {
                var cell = (word << 6) + BitOperations.TrailingZeroCount(_filled[word]);
                var (low, high) = _ends[cell];
                group += low - last > (Apart * Misreading.Spread(low, amps)) + (BatteryDiffers * Math.Abs(low)) ? 1 : 0;
                (_group[cell], last) = (group, high);
            }
        }

        for (var i = 0; i < groups.Length; i++)
        {
            groups[i] = _group[groups[i]];
        }

        return group + 1;
    }

    private static int CellOf(double volts) => (int)Math.Clamp((volts + Most) / Cell, 0, Cells - 1);
}
