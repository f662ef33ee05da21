using Loomwright.Parts;

namespace Loomwright.Network;

/// <content>The linear system of the present slopes: eliminated, solved, its resistances read.</content>
internal sealed partial class Equations
{
    /// <summary>Eliminates with the slopes of the last evaluation; does only what changed since the last time.</summary>
    public void Factor()
    {
        if (_linesChanged)
        {
            FactorLines();
        }
        else if (BendCount == 0)
        {
            return;
        }

        _factors.Restore();
        foreach (var b in Bent)
        {
            if (_ends[b].Slot != NoSlot)
            {
                _factors.Add(_ends[b].Slot, _siemens[b]);
            }
        }

        _factors.Eliminate(_eliminated, Unknowns);
    }

    /// <summary>The step that would bring every current sum to zero if no curve bent.</summary>
    public void NewtonStep(Span<double> stepVolts)
    {
        for (var k = 0; k < stepVolts.Length; k++)
        {
            stepVolts[k] = -_sums[k];
        }

        _factors.Solve(stepVolts);
    }

    /// <summary>Resistance from each place to the reference at the present slopes.</summary>
    public void ResistanceToReference(Span<double> ohms)
    {
        Factor();
        _factors.ResistanceToReference(ohms, _transferOhms);
    }

    /// <summary>Potentials of all places that one amp into each would give, row by row; one more row and column for the reference.</summary>
    public void TransferOhms(Span<double> ohms)
    {
        Factor();
        ohms.Clear();
        for (var k = 0; k < Unknowns; k++)
        {
            var row = ohms.Slice(k * (Unknowns + 1), Unknowns);
            row[k] = 1;
            _factors.Solve(row, k);
        }
    }

    // Straight branches once; of the collapsed places only those that no bent branch has come to since.
    private void FactorLines()
    {
        _factors.Clear();
        _eliminated = _order.CollapsedCount;
        for (var b = 0; b < _bends.Length; b++)
        {
            if (_ends[b].Slot == NoSlot)
            {
                continue;
            }

            if (_bends[b])
            {
                _eliminated = Math.Min(_eliminated, Math.Min(_ends[b].From, _ends[b].To));
            }
            else if (_curves[b] is not FixedVoltage)
            {
                _factors.Add(_ends[b].Slot, _lines[b].Siemens);
            }
        }

        _factors.Eliminate(0, _eliminated);
        _factors.Save(_eliminated);
        _linesChanged = false;
    }
}
