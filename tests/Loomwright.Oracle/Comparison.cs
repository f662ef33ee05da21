using Loomwright.Network;
using Loomwright.Parts;

namespace Loomwright.Oracle;

/// <summary>One random network solved by us, by the general simulator and in exact fractions, side by side.</summary>
/// <param name="Seed">Makes the network again.</param>
/// <param name="Bends">Whether any curve bends.</param>
/// <param name="SimulatorValid">Whether the simulator had a valid operating point.</param>
/// <param name="FromItsOwnStart">Whether it arrived from its own start; else it was started at our potentials and stayed there by its own equations.</param>
/// <param name="FloatingNodes">Nodes checked against the exact solution because they float.</param>
/// <param name="ResidualAmps">Our largest current sum.</param>
/// <param name="Steps">Our Newton steps.</param>
/// <param name="WorstOfSimulator">Largest difference to the simulator as a part of what is allowed.</param>
/// <param name="WorstOfExact">The same to the exact solution.</param>
/// <param name="Wrong">Everything outside what is allowed, empty when all is well.</param>
public sealed record Comparison(
    ulong Seed, bool Bends, bool SimulatorValid, bool FromItsOwnStart, int FloatingNodes, double ResidualAmps, int Steps, double WorstOfSimulator, double WorstOfExact, IReadOnlyList<string> Wrong)
{
    /// <summary>Makes the network of a seed and compares. Odd seeds bend.</summary>
    /// <param name="seed">Which network.</param>
    /// <param name="exactAlways">Exact fractions for every straight network, not only where nodes float.</param>
    public static Comparison Of(ulong seed, bool exactAlways) => Of(RandomNetwork.Make(seed, bends: seed % 2 == 1), seed, exactAlways);

    /// <summary>Compares a circuit.</summary>
    /// <param name="circuit">Which.</param>
    /// <param name="seed">What it came from.</param>
    /// <param name="exactAlways">Exact fractions for every straight network, not only where nodes float.</param>
    public static Comparison Of(Circuit circuit, ulong seed, bool exactAlways)
    {
        var bends = circuit.Branches.Any(branch => branch.Curve.Straight is null && branch.Curve is not FixedVoltage);
        var solver = new Solver(circuit);
        var outcome = solver.Solve();
        if (outcome is not Outcome.Solved)
        {
            return new(seed, bends, false, false, 0, 0, solver.Steps, 0, 0, [$"not solved: {outcome}"]);
        }

        var wrong = new List<string>();
        var floating = solver.Floating.Count(true);
        var exact = floating > 0 || (exactAlways && !bends) ? ExactSolution.Potentials(circuit, Lines(circuit, solver.Potentials)) : null;
        var allowed = bends ? 1e-6 : 1e-9;
        var ofExact = exact is null ? 0 : AgainstExact(solver.Potentials, exact, allowed, wrong);
        var ownStart = Simulated(circuit, default);
        var simulator = ownStart ?? Simulated(circuit, solver.Potentials);
        var differs = new List<string>();
        var ofSimulator = simulator is null ? 0 : AgainstSimulator(solver, simulator, allowed, differs);
        if (simulator is not null && differs.Count > 0 && !IsSolution(circuit, simulator, solver.Floating, allowed))
        {
            (simulator, ofSimulator) = (null, 0);
            differs.Clear();
        }

        wrong.AddRange(differs);
        if (solver.ResidualAmps > (allowed))
        {
            wrong.Add(FormattableString.Invariant($"residual {solver.ResidualAmps:R} A"));
        }

        return new(seed, bends, simulator is not null, ownStart is not null, floating, solver.ResidualAmps, solver.Steps, ofSimulator, ofExact, wrong);
    }

    // Strict first: a loose tolerance is taken only where rounding keeps the simulator from ever arriving.
    private static Ngspice.Point? Simulated(Circuit circuit, ReadOnlySpan<double> start) =>
        !Ngspice.IsInstalled ? null : Ngspice.Solve(circuit, 1e-9, start) ?? Ngspice.Solve(circuit, 1e-7, start) ?? Ngspice.Solve(circuit, 1e-5, start);

    // Our answer plays no part here: one Newton step without rounding from the simulator's own point must leave it where it is.
    private static bool IsSolution(Circuit circuit, Ngspice.Point simulator, ReadOnlySpan<bool> floating, double allowed)
    {
        var lines = Lines(circuit, simulator.Potentials);
        var exact = ExactSolution.Potentials(circuit, lines);
        var moved = new List<string>();
        for (var n = 0; n < exact.Length; n++)
        {
            _ = floating[n] ? 0 : Part("node", n, simulator.Potentials[n], exact[n], allowed, moved);
        }

        for (var b = 0; b < lines.Length; b++)
        {
            var (from, to, curve) = circuit.Branches[b];
            _ = !Deck.HasCurrent(circuit.Branches[b]) || curve is FixedVoltage
                ? 0 : Part("branch", b, simulator.Amps[b], lines[b].At(exact[from] - exact[to]).Amps, allowed, moved);
        }

        return moved.Count == 0;
    }

    private static double AgainstSimulator(Solver solver, Ngspice.Point simulator, double absolute, List<string> wrong)
    {
        var worst = 0.0;
        for (var n = 0; n < simulator.Potentials.Length; n++)
        {
            if (!solver.Floating[n])
            {
                worst = Math.Max(worst, Part("node", n, solver.Potentials[n], simulator.Potentials[n], absolute, wrong));
            }
        }

        for (var b = 0; b < simulator.Amps.Length; b++)
        {
            if (!double.IsNaN(simulator.Amps[b]))
            {
                worst = Math.Max(worst, Part("branch", b, solver.Amps[b], simulator.Amps[b], absolute, wrong));
            }
        }

        return worst;
    }

    private static Line[] Lines(Circuit circuit, ReadOnlySpan<double> potentials)
    {
        var lines = new Line[circuit.Branches.Length];
        for (var b = 0; b < lines.Length; b++)
        {
            lines[b] = LineAt(circuit.Branches[b], potentials);
        }

        return lines;
    }

    private static double AgainstExact(ReadOnlySpan<double> potentials, double[] exact, double allowed, List<string> wrong)
    {
        var worst = 0.0;
        for (var n = 0; n < exact.Length; n++)
        {
            worst = Math.Max(worst, Part("exact node", n, potentials[n], exact[n], allowed, wrong));
        }

        return worst;
    }

    // A bent curve is replaced by its tangent at the voltage found.
    private static Line LineAt(Branch branch, ReadOnlySpan<double> potentials)
    {
        if (branch.Curve.Straight is { } line)
        {
            return line;
        }

        var volts = potentials[branch.From] - potentials[branch.To];
        var point = branch.Curve.At(volts);
        return branch.Curve is FixedVoltage ? default : new(point.Siemens, volts, point.Amps);
    }

    private static double Part(string what, int index, double ours, double theirs, double absolute, List<string> wrong)
    {
        var part = Math.Abs(ours - theirs) / (absolute + (1e-6 * Math.Abs(theirs)));
        if (!(part <= 1))
        {
            wrong.Add(FormattableString.Invariant($"{what} {index}: {ours:R}, reference {theirs:R}"));
        }

        return part;
    }
}
