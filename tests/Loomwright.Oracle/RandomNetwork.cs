using Loomwright.Network;
using Loomwright.Parts;

namespace Loomwright.Oracle;

/// <summary>
/// A network made from a seed: a tree like a harness with a few more branches across it, some nodes only behind open
/// contacts. The same seed gives the same network on every machine.
/// </summary>
public static class RandomNetwork
{
    /// <summary>A network of up to <paramref name="mostNodes"/> nodes; sizes spread evenly over their logarithm.</summary>
    public static Circuit Make(ulong seed, bool bends, int mostNodes = 60)
    {
        var dice = new Dice(seed);
        return OfSize(dice, (int)dice.Spread(2, mostNodes + 0.99), bends);
    }

    /// <summary>A network of exactly this many nodes.</summary>
    public static Circuit OfSize(Dice dice, int nodes, bool bends)
    {
        var branches = new List<Branch>();
        var tied = Enumerable.Range(0, nodes).ToArray();
        for (var n = 1; n < nodes; n++)
        {
            var to = dice.Chance(0.5) ? n - 1 : dice.Below(n);
            branches.Add(dice.Chance(0.5) ? new(n, to, dice.TreeCurve(bends)) : new(to, n, dice.TreeCurve(bends)));
        }

        for (var extra = dice.Below(nodes + 2) + 1; extra > 0; extra--)
        {
            var from = dice.Below(nodes);
            var to = (from + 1 + dice.Below(nodes - 1)) % nodes;
            branches.Add(new(from, to, dice.CrossCurve(bends)));
            if (branches[^1].Curve is FixedCurrent)
            {
                // A way back beside it, or it would push megavolts through open contacts.
                branches.Add(new(to, from, new Ohms(dice.Spread(1, 1e3))));
            }
        }

        for (var ideal = dice.Below(3); ideal > 0; ideal--)
        {
            var (from, to) = (dice.Below(nodes), dice.Below(nodes));
            if (tied[from] != tied[to])
            {
                var old = tied[from];
                tied = [.. tied.Select(group => group == old ? tied[to] : group)];
                branches.Add(new(from, to, new FixedVoltage(dice.Chance(0.3) ? 0 : dice.Even(-14, 14))));
            }
        }

        return new(nodes, [.. dice.Chance(0.003) ? CutOff(branches, dice.Below(nodes)) : branches]);
    }

    // All that leads to one node is opened: an island, as a plug pulled out leaves it.
    private static IEnumerable<Branch> CutOff(List<Branch> branches, int node) => branches.Select(branch =>
        (branch.From == node || branch.To == node) && branch.Curve is not FixedVoltage ? branch with { Curve = new Open() } : branch)
        .Where(branch => branch.Curve is not FixedCurrent);
}
