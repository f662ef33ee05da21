using BenchmarkDotNet.Attributes;
using Loomwright.Network;
using Loomwright.Oracle;
using Loomwright.Parts;

namespace Loomwright.Benchmarks;

/// <summary>
/// One operating point by our solver and by ngspice in this process, from a cold start and from the answer. A contact
/// gets another resistance before each of our solves, so that no factor of the last one is left to use.
/// </summary>
public class Sides
{
    /// <summary>When the simulator takes a point as arrived.</summary>
    public const double Tolerance = 1e-7;

    private const int Points = 20;

    private Solver _solver = null!;
    private int _contact;
    private Curve[] _states = [];
    private int _turn;

    public static IEnumerable<Case> Circuits => Cases.All;

    [ParamsSource(nameof(Circuits))]
    public Case Case { get; set; } = null!;

    [GlobalSetup(Targets = [nameof(OursCold), nameof(OursWarm)])]
    public void LayOut()
    {
        _solver = new(Case.Circuit);
        _contact = Case.Circuit.Branches.Select((branch, b) => (branch, b)).First(x => x.branch.Curve is Ohms { ResistanceOhms: < 1 }).b;
        var ohms = ((Ohms)Case.Circuit.Branches[_contact].Curve).ResistanceOhms;
        _states = [new Ohms(ohms * 1.01), new Ohms(ohms)];
        _solver.Solve();
    }

    [GlobalSetup(Target = nameof(NgspiceCold))]
    public void LoadCold() => Ngspice.Load(Case.Circuit, Tolerance);

    [GlobalSetup(Target = nameof(NgspiceWarm))]
    public void LoadWarm()
    {
        var solver = new Solver(Case.Circuit);
        solver.Solve();
        Ngspice.Load(Case.Circuit, Tolerance, solver.Potentials);
    }

    [GlobalCleanup(Targets = [nameof(NgspiceCold), nameof(NgspiceWarm)])]
    public void Unload() => Ngspice.Unload();

    [Benchmark]
    public double OursCold() => Ours(warm: false);

    [Benchmark]
    public double OursWarm() => Ours(warm: true);

    [Benchmark(OperationsPerInvoke = Points)]
    public bool NgspiceCold() => Theirs();

    [Benchmark(OperationsPerInvoke = Points)]
    public bool NgspiceWarm() => Theirs();

    /// <summary>Whether both have the same answer, to 1e-6 relative + 1e-6 V, wherever nothing floats.</summary>
    public static bool Agree(Circuit circuit)
    {
        var solver = new Solver(circuit);
        if (solver.Solve() is not Outcome.Solved || Ngspice.Solve(circuit, Tolerance) is not { } theirs)
        {
            return false;
        }

        for (var n = 0; n < theirs.Potentials.Length; n++)
        {
            if (!solver.Floating[n] && Math.Abs(solver.Potentials[n] - theirs.Potentials[n]) > 1e-6 * (1 + Math.Abs(theirs.Potentials[n])))
            {
                return false;
            }
        }

        return true;
    }

    private double Ours(bool warm)
    {
        _solver.SetCurve(_contact, _states[_turn ^= 1]);
        _solver.Solve(warm);
        return _solver.ResidualAmps;
    }

    private static bool Theirs()
    {
        var all = true;
        for (var k = 0; k < Points; k++)
        {
            all &= Ngspice.Run();
        }

        Ngspice.Forget();
        return all;
    }
}
