using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Loomwright.Bench;
using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Sessions;

/// <summary>What there is to see and hear in a stage, and how it should stand at each of its steps with power on.</summary>
public sealed class Sights
{
    private static readonly ConditionalWeakTable<Stage, Sights> Known = [];

    private readonly Dictionary<string, (Stimulus Done, ImmutableArray<byte> Signs)> _at = new(StringComparer.Ordinal);

    private Sights(Stage stage)
    {
        var steps = stage.Steps.Where(s => s.PowerOn).ToList();
        var done = new List<Operation>();
        var whole = new List<Stimulus>();
        foreach (var step in steps)
        {
            done.AddRange(step.Do is { } set ? [set] : step.Wait is { } wait ? [new Operation.Wait(wait)] : []);
            whole.Add(Stimulus.Of([.. done]));
        }

        var rest = stage.Connected.Parts.SelectMany(p => Bike.Model(p).Controls).DistinctBy(c => c.Name).ToDictionary(c => c.Name, c => c.Rest);
        var brief = whole.ConvertAll(s => Stimulus.Of([.. s.Operations.OfType<Operation.Set>().GroupBy(o => o.Control).Select(g => g.Last()).Where(o => o.Position != rest[o.Control])]));
        var table = FaultTable.Of(stage.Connected, new DictionaryOptions { Stimuli = [.. whole, .. brief], Faults = [], Points = [] });
        What = table.Observables;
        for (var s = 0; s < steps.Count; s++)
        {
            // What a hand does last to get there says the same in fewer words, where the bike stands so after it.
            var (asDone, shorter) = (table.Healthy.Looks[s], table.Healthy.Looks[steps.Count + s]);
            _at[steps[s].Id] = (asDone.LooksLike(shorter) ? brief[s] : whole[s], asDone.Signs);
        }
    }

    /// <summary>Everything that can be told without a meter.</summary>
    public ImmutableArray<Observable> What { get; }

    /// <summary>Everything done in the stage, each once.</summary>
    public IEnumerable<Stimulus> Done => _at.Values.Select(a => a.Done).Distinct();

    /// <summary>Worked out once for each stage.</summary>
    public static Sights Of(Stage stage) => Known.GetValue(stage, s => new Sights(s));

    /// <summary>What was done up to and with a step; null before power.</summary>
    public Stimulus? At(string step) => _at.TryGetValue(step, out var at) ? at.Done : null;

    /// <summary>How each of <see cref="What"/> should then stand; empty before power.</summary>
    public ImmutableArray<byte> Should(string step) => _at.TryGetValue(step, out var at) ? at.Signs : [];

    /// <summary>What a person may tell of one of <see cref="What"/>, in words, each with its sign.</summary>
    public ImmutableArray<(string Word, byte Sign)> Words(int observable)
    {
        var shown = _at.Values.Select(a => (Symbol)a.Signs[observable]).ToHashSet();
        Symbol[] kinds = What[observable].Sense switch
        {
            Sense.Fuse => [],
            Sense.Relay => [],
            Sense.BoxLight => [Symbol.Dark, Symbol.Lit, Symbol.Flashing],
            _ when shown.Contains(Symbol.Silent) || shown.Contains(Symbol.Sounds) => [Symbol.Silent, Symbol.Sounds],
            _ when shown.Contains(Symbol.Turns) => [Symbol.Rests, Symbol.Turns],
            _ when shown.Contains(Symbol.Rests) || shown.Contains(Symbol.Works) => [Symbol.Rests, Symbol.Works],
            _ => [Symbol.Dark, Symbol.Dim, Symbol.Lit, Symbol.Flashing, Symbol.FlashingFast, Symbol.FlashingSlowly],
        };
        byte[] signs = What[observable].Sense == Sense.Fuse ? [(byte)FuseState.Whole, (byte)FuseState.Blown] : [.. kinds.Select(k => (byte)k)];
        return [.. signs.Select(s => (What[observable].Word(s), s))];
    }
}
