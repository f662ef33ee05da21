namespace Loomwright.Network;

/// <summary>
/// A grounded network of conductances and its elimination. Conductance between two places and conductance to the
/// reference are kept apart and every pivot is a sum of numbers that are never negative (star–mesh), so no digit is
/// lost to a difference: nodes tied by milliohms and hung on 1e−9 S come out right. The idea is that of Grassmann,
/// Taksar and Heyman (1985) for Markov chains.
/// </summary>
internal sealed class Factors(Elimination order)
{
    private readonly double[] _between = new double[order.Row.Length];
    private readonly double[] _toReference = new double[order.Place.Length];
    private readonly double[] _share = new double[order.Row.Length];
    private readonly double[] _inversePivot = new double[order.Place.Length];
    private readonly double[] _savedBetween = new double[order.Row.Length];
    private readonly double[] _savedToReference = new double[order.Place.Length];
    private int _savedFrom;

    public void Clear()
    {
        Array.Clear(_between);
        Array.Clear(_toReference);
    }

    /// <summary>Adds a conductance at a slot, or between place and reference where the slot is its complement.</summary>
    public void Add(int slot, double siemens)
    {
        if (slot >= 0)
        {
            _between[slot] += siemens;
        }
        else
        {
            _toReference[~slot] += siemens;
        }
    }

    /// <summary>Keeps the present numbers, of which the first places are eliminated already.</summary>
    public void Save(int eliminated)
    {
        _savedFrom = eliminated;
        var slot = order.Start[eliminated];
        _between.AsSpan(slot).CopyTo(_savedBetween.AsSpan(slot));
        _toReference.AsSpan(eliminated).CopyTo(_savedToReference.AsSpan(eliminated));
    }

    /// <summary>Takes the kept numbers back.</summary>
    public void Restore()
    {
        var slot = order.Start[_savedFrom];
        _savedBetween.AsSpan(slot).CopyTo(_between.AsSpan(slot));
        _savedToReference.AsSpan(_savedFrom).CopyTo(_toReference.AsSpan(_savedFrom));
    }

    /// <summary>Eliminates places <paramref name="first"/> .. <paramref name="end"/> − 1.</summary>
    public void Eliminate(int first, int end)
    {
        var between = _between;
        var row = order.Row;
        var pair = order.Pair;
        for (var k = first; k < end; k++)
        {
            var stop = order.Start[k + 1];
            var toReference = _toReference[k];
            var pivot = toReference;
            for (var i = order.Start[k]; i < stop; i++)
            {
                pivot += between[i];
            }

            // Only the last node of a part without any path to the reference has nothing left: it stays where it is.
            var inverse = pivot > 0 ? 1 / pivot : 0;
            _inversePivot[k] = inverse;
            var p = order.PairStart[k];
            for (var i = order.Start[k]; i < stop; i++)
            {
                var share = between[i] * inverse;
                _share[i] = share;
                _toReference[row[i]] += share * toReference;
                for (var j = i + 1; j < stop; j++)
                {
                    between[pair[p++]] += share * between[j];
                }
            }
        }
    }

    /// <summary>Turns currents into the places, in elimination order, into potentials.</summary>
    /// <param name="values">The currents, then the potentials.</param>
    /// <param name="first">The first place with a current.</param>
    public void Solve(Span<double> values, int first = 0)
    {
        var row = order.Row;
        var start = order.Start;
        var share = _share;
        var n = order.Place.Length;
        for (var k = first; k < n; k++)
        {
            var amps = values[k];
            var stop = start[k + 1];
            for (var i = start[k]; i < stop; i++)
            {
                values[row[i]] += share[i] * amps;
            }
        }

        for (var k = n - 1; k >= 0; k--)
        {
            var volts = values[k] * _inversePivot[k];
            var stop = start[k + 1];
            for (var i = start[k]; i < stop; i++)
            {
                volts += share[i] * values[row[i]];
            }

            values[k] = volts;
        }
    }

    /// <summary>
    /// Resistance from each place to the reference, everything else at rest: the diagonal of the inverse, by the
    /// recurrence of Takahashi (1973), here again a sum of numbers that are never negative.
    /// </summary>
    /// <param name="ohms">The result; means nothing on a part without a path to the reference.</param>
    /// <param name="transfer">Scratch, one per slot.</param>
    public void ResistanceToReference(Span<double> ohms, Span<double> transfer)
    {
        transfer.Clear();
        for (var k = ohms.Length - 1; k >= 0; k--)
        {
            var p = order.PairStart[k];
            var own = _inversePivot[k];
            for (var i = order.Start[k]; i < order.Start[k + 1]; i++)
            {
                transfer[i] += _share[i] * ohms[order.Row[i]];
                for (var j = i + 1; j < order.Start[k + 1]; j++)
                {
                    var between = transfer[order.Pair[p++]];
                    transfer[i] += _share[j] * between;
                    transfer[j] += _share[i] * between;
                }

                own += _share[i] * transfer[i];
            }

            ohms[k] = own;
        }
    }

    /// <summary>Slots, for sizing scratch.</summary>
    public int SlotCount => _between.Length;
}
