using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Parts;
using Loomwright.Simulation;

namespace Loomwright.Dictionary;

/// <summary>
/// What every single fault of a loom looks like after every stimulus, beside the loom with nothing wrong. Faults that
/// come to the same circuit are one entry; entries that look alike after every stimulus are one class.
/// </summary>
public sealed class FaultTable
{
    private FaultTable()
    {
    }

    /// <summary>What was done.</summary>
    public required ImmutableArray<Stimulus> Stimuli { get; init; }

    /// <summary>What a person can tell without a meter, in the order of <see cref="Look.Signs"/>.</summary>
    public required ImmutableArray<Observable> Observables { get; init; }

    /// <summary>Where a meter may be put, in the order of <see cref="Look.Volts"/>.</summary>
    public required ImmutableArray<TerminalRef> Points { get; init; }

    /// <summary>First the loom with nothing wrong, then the faults in the catalogue's order.</summary>
    public required ImmutableArray<Entry> Entries { get; init; }

    /// <summary>Places of the entries that look alike after every stimulus; the first class is that of no fault.</summary>
    public required ImmutableArray<ImmutableArray<int>> Classes { get; init; }

    /// <summary>Operating points found to make it.</summary>
    public required long Solves { get; init; }

    /// <summary>The loom with nothing wrong.</summary>
    public Entry Healthy => Entries[0];

    /// <summary>The entry of a fault by its id; null when it is not listed.</summary>
    public Entry? Find(string id) => Entries.FirstOrDefault(e => e.Faults.Any(f => Text.Names.Same(f.Fault.ToString(), id)));

    /// <summary>Makes the dictionary of exactly this loom: the whole bike, or what is connected at a stage.</summary>
    public static FaultTable Of(Loom loom, DictionaryOptions? options = null)
    {
        options ??= new DictionaryOptions();
        var wiring = Wiring.Of(loom);
        var circuits = DistinctCircuits.Of(wiring, options.Faults ?? Catalogue.List(loom, options.Priors), options.Shortcuts, options.Workers);
        var stimuli = options.Stimuli ?? Dictionary.Stimuli.Usual(loom);
        var points = options.Points ?? UsualPoints(wiring);
        var (looks, solves) = new Making(wiring, circuits, stimuli, points, options).Looks();
        var classes = Alike(looks);
        var priors = circuits.Select(c => c.Faults.Sum(f => f.Prior(options.Priors))).ToList();
        return new FaultTable
        {
            Stimuli = stimuli,
            Observables = Viewer.Observables(wiring),
            Points = points,
            Entries = [.. circuits.Select((c, e) => new Entry(c.Faults, e == 0 ? Math.Max(0, priors.Aggregate(1.0, (left, p) => left * (1 - Math.Min(1, p)))) : priors[e], looks[e], classes.Of[e]))],
            Classes = classes.All,
            Solves = solves,
        };
    }

    /// <summary>The terminals of everything that can be seen or heard, and the supply and ground of the boxes.</summary>
    private static ImmutableArray<TerminalRef> UsualPoints(Wiring wiring) =>
    [
        .. from part in wiring.Parts
           where !part.Model.Sights.IsEmpty || part.Model.Controller is not null
           from terminal in part.Model.Terminals
           where part.Model.Controller is not { } box || terminal.Mark == box.Supply || terminal.Mark == box.Ground
           select new TerminalRef(part.Name, terminal.Mark),
    ];

    private static (ImmutableArray<ImmutableArray<int>> All, int[] Of) Alike(ImmutableArray<Look>[] looks)
    {
        var of = new int[looks.Length];
        var all = new List<List<int>>();
        var known = new Dictionary<ImmutableArray<Look>, int>(new LookAlike());
        for (var e = 0; e < looks.Length; e++)
        {
            if (!known.TryGetValue(looks[e], out of[e]))
            {
                known.Add(looks[e], of[e] = all.Count);
                all.Add([]);
            }

            all[of[e]].Add(e);
        }

        return ([.. all.Select(c => c.ToImmutableArray())], of);
    }

    private sealed class LookAlike : IEqualityComparer<ImmutableArray<Look>>
    {
        public bool Equals(ImmutableArray<Look> x, ImmutableArray<Look> y)
        {
            for (var s = 0; s < x.Length; s++)
            {
                if (!x[s].LooksLike(y[s]))
                {
                    return false;
                }
            }

            return true;
        }

        public int GetHashCode(ImmutableArray<Look> looks)
        {
            var hash = default(HashCode);
            foreach (var look in looks)
            {
                hash.AddBytes(look.Signs.AsSpan());
            }

            return hash.ToHashCode();
        }
    }
}
