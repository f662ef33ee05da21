using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>Something told in one look that cannot well be so together.</summary>
public static class Doubt
{
    /// <summary>A fuse told to be blown and something told to be on, of which nothing in the list shows both there; in a sentence, or null.</summary>
    public static string? Of(TroubleTable table, Evidence.Seen seen)
    {
        var looks = table.Singles.Select(h => h.Looks[seen.Stimulus].Signs).Where(s => !s.IsEmpty).ToList();
        foreach (var fuse in seen.Signs.Where(s => Is(table, s, Sense.Fuse) && (FuseState)s.Sign == FuseState.Blown))
        {
            var with = looks.Where(l => l[fuse.Observable] == fuse.Sign).ToList();
            foreach (var on in seen.Signs.Where(s => (Is(table, s, Sense.Sight) || Is(table, s, Sense.BoxLight)) && (Symbol)s.Sign is not (Symbol.Dark or Symbol.Silent or Symbol.Rests)))
            {
                if (!with.Exists(l => l[on.Observable] == on.Sign))
                {
                    return $"{Why.Told(table, on.Observable, on.Sign)}, and {Why.Told(table, fuse.Observable, fuse.Sign)}: nothing in the list shows both. Look at both again.";
                }
            }
        }

        return null;
    }

    private static bool Is(TroubleTable table, (int Observable, byte Sign) sign, Sense sense) => table.Table.Observables[sign.Observable].Sense == sense;
}
