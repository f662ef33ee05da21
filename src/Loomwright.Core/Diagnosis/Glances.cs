using System.Collections.Immutable;
using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>What a look would show under each of the hypotheses that matter, with the battery as it is thought to stand. Not for two threads at once.</summary>
internal sealed class Glances(FaultTable table, ImmutableArray<Hypothesis> all, int[] live, Alike alike, double battery)
{
    // Shares in which a lamp is told dim, in tenths: those further apart than this are told apart.
    private const int Tenths = 10, Apart = 4;

    private readonly int[] _dim = new int[live.Length];
    private readonly int[] _number = new int[Tenths + 1];
    private readonly Dictionary<(int, int), int> _known = [];

    /// <summary>Numbers the looks from 0, those that eyes do not tell apart alike.</summary>
    public void Number(int stimulus, int[] into)
    {
        Renumber(alike.Looks(stimulus), into);
        for (var lamp = 0; lamp < table.Observables.Length; lamp++)
        {
            if (table.Observables[lamp].LightPower is not null)
            {
                Split(stimulus, lamp, into);
            }
        }
    }

    // Lit and dim are told apart by how likely either is to be told; where something else is seen, that tells them apart already.
    private void Split(int stimulus, int lamp, int[] into)
    {
        if (!MayDiffer(stimulus, lamp))
        {
            return;
        }

        Array.Fill(_number, -1);
        for (var i = 0; i < live.Length; i++)
        {
            var look = all[live[i]].Looks[stimulus];
            _dim[i] = Shines(look, lamp) ? Dim(lamp, look.Light[lamp], look.SupplyAmps) : 0;
            _number[_dim[i]] = 0;
        }

        var (group, last) = (0, -1);
        for (var tenth = 0; tenth < _number.Length; tenth++)
        {
            if (_number[tenth] == 0)
            {
                group += last >= 0 && tenth - last >= Apart ? 1 : 0;
                (_number[tenth], last) = (group, tenth);
            }
        }

        if (group > 0)
        {
            _known.Clear();
            for (var i = 0; i < live.Length; i++)
            {
                var key = (into[i], _number[_dim[i]]);
                into[i] = _known.TryGetValue(key, out var number) ? number : _known[key] = _known.Count;
            }
        }
    }

    // By the brightest and the darkest there may be: most lamps shine alike whatever is wrong.
    private bool MayDiffer(int stimulus, int lamp)
    {
        var (dark, bright, least, most) = (float.MaxValue, 0f, double.MaxValue, 0.0);
        foreach (var e in live)
        {
            var look = all[e].Looks[stimulus];
            if (Shines(look, lamp))
            {
                (dark, bright) = (Math.Min(dark, look.Light[lamp]), Math.Max(bright, look.Light[lamp]));
                (least, most) = (Math.Min(least, Math.Abs(look.SupplyAmps)), Math.Max(most, Math.Abs(look.SupplyAmps)));
            }
        }

        return bright > 0 && Dim(lamp, dark, most) - Dim(lamp, bright, least) >= Apart;
    }

    private static bool Shines(Look look, int lamp) => !look.Signs.IsEmpty && (Symbol)look.Signs[lamp] is Symbol.Lit or Symbol.Dim;

    private int Dim(int lamp, double light, double amps) => (int)Math.Round(Tenths * Brightness.DimOfAny(light * Brightness.Left(table.Observables[lamp], battery, amps)));

    private void Renumber(int[] numbers, int[] into)
    {
        _known.Clear();
        for (var i = 0; i < live.Length; i++)
        {
            var key = (numbers[live[i]], 0);
            into[i] = _known.TryGetValue(key, out var number) ? number : _known[key] = _known.Count;
        }
    }
}
