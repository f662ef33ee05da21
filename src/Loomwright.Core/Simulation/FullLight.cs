using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Network;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Simulation;

/// <summary>
/// The full light of every lamp of a healthy loom, by its name: the best it gives there over the functions that show it
/// lit or flashing, each with its controls operated once; for a lamp in no function, or one that its functions leave
/// dark, the light it gives straight across the supply (docs/models/light.md).
/// </summary>
internal sealed class FullLight
{
    private static readonly ConditionalWeakTable<Loom, FullLight> Known = [];

    private readonly Dictionary<string, double> _light;
    private readonly ConcurrentDictionary<string, double> _asSpelled = new(StringComparer.Ordinal);

    private FullLight(Loom loom)
    {
        var wiring = Wiring.Of(loom);
        var best = new double[wiring.Sights.Length];
        foreach (var function in loom.Functions.Where(f => Shown(wiring, f).Any()))
        {
            if (Operated.For(wiring, function.Works) is { } settled)
            {
                foreach (var s in Shown(wiring, function))
                {
                    best[s] = settled.Pictures.Select(p => Raw(wiring.Sights[s], p)).Append(best[s]).Max();
                }
            }
        }

        _light = new Dictionary<string, double>(Names.Comparer);
        for (var s = 0; s < best.Length; s++)
        {
            var straight = AcrossSupply(wiring, wiring.Sights[s]);
            _light[wiring.Sights[s].Name] = best[s] > Light.DarkBelow * straight ? best[s] : straight;
        }
    }

    /// <summary>Worked out once for each healthy loom, which carries its supply.</summary>
    public static FullLight Of(Loom healthy) => Known.GetValue(healthy, static loom => new FullLight(loom));

    /// <summary>Share of its full light; null for what gives none, 0 for a lamp the healthy loom cannot light.</summary>
    public double? Share(SightPlace sight, Picture picture) =>
        sight.Sight is not Sight.Lamp ? null
        : _asSpelled.GetOrAdd(sight.Name, static (name, light) => light.GetValueOrDefault(name), _light) is > 0 and var full ? Raw(sight, picture) / full
        : 0;

    private static double Raw(SightPlace sight, Picture picture) =>
        sight.Sight is Sight.Lamp lamp ? Light.Of(lamp.Law, picture.SquareVolts[sight.Link], picture.Amps[sight.Link]) : 0;

    private static IEnumerable<int> Shown(Wiring wiring, Function function) =>
        from s in Enumerable.Range(0, wiring.Sights.Length)
        let sight = wiring.Sights[s]
        where sight.Sight is Sight.Lamp && function.Shows.Any(show =>
            show.Symbol is "lit" or "flashing" && (Names.Same(show.What, sight.Name) || Names.Same(show.What, sight.Part) || Names.Same(show.What, "all lamps")))
        select s;

    private static double AcrossSupply(Wiring wiring, SightPlace sight)
    {
        if (wiring.Supplies.IsEmpty || sight.Sight is not Sight.Lamp lamp)
        {
            return 0;
        }

        var source = wiring.Links[wiring.Supplies[0]];
        var solver = new Solver(new Circuit(2, [new Branch(1, 0, source.Curve), new Branch(1, 0, wiring.Links[sight.Link].Curve)]));
        return solver.Solve() is Network.Outcome.Solved
            ? Light.Of(lamp.Law, solver.Potentials[1] * solver.Potentials[1], solver.Amps[1])
            : 0;
    }
}
