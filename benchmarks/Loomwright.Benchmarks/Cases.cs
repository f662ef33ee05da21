using System.Runtime.CompilerServices;
using Loomwright.Network;
using Loomwright.Oracle;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Benchmarks;

/// <summary>One circuit to be solved by both; the name is what the table shows.</summary>
public sealed record Case(string Name, Circuit Circuit)
{
    public override string ToString() => Name;
}

/// <summary>The circuits measured. A random one is the first of its size that the simulator solves from its own start.</summary>
internal static class Cases
{
    public static IReadOnlyList<Case> All { get; } =
    [
        Example("kittiwake-bench"),
        .. new[] { 50, 150, 500 }.SelectMany(nodes => new[] { Random(nodes, bends: false), Random(nodes, bends: true) }),
    ];

    // With every contact, output and fuse of the example conducting.
    private static Case Example(string name) => new(name, Wiring.Of(Loom(name)).Circuit());

    /// <summary>An example by its folder's name.</summary>
    public static Design.Loom Loom(string name)
    {
        var text = File.ReadAllText(Path.Combine(Path.GetDirectoryName(ThisFile())!, "..", "..", "examples", name, name + ".loom.yaml"));
        return Bike.Read(new SourceText(name, text)).Loom ?? throw new InvalidDataException(name + " cannot be read");
    }

    private static string ThisFile([CallerFilePath] string path = "") => path;

    private static Case Random(int nodes, bool bends)
    {
        for (var seed = 1UL; ; seed++)
        {
            var circuit = RandomNetwork.OfSize(new Dice(seed), nodes, bends);
            if (Ngspice.Solve(circuit, Sides.Tolerance) is not null && Sides.Agree(circuit))
            {
                return new(FormattableString.Invariant($"{nodes} nodes, {(bends ? "bent" : "straight")}, seed {seed}"), circuit);
            }
        }
    }
}
