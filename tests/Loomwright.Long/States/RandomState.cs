using Loomwright.Faults;
using Loomwright.Network;
using Loomwright.Oracle;
using Loomwright.Simulation;

namespace Loomwright.Long.States;

/// <summary>One random state as it settled.</summary>
internal sealed record RandomState(string Bike, ulong Seed, Fault? Fault, Wiring Wiring, Settler Settler, Settled Settled)
{
    private const double AllowedVolts = 1e-6;

    /// <summary>Largest current sum at any node: as the solver says, and added up once more from the currents shown.</summary>
    public double ResidualAmps => Settled.Pictures.Select(p => Math.Max(p.ResidualAmps, LargestSumAmps(p))).DefaultIfEmpty(0).Max();

    /// <summary>Every circuit this state makes beside the general simulator, flashes and the moments of dimming each on its own.</summary>
    public IEnumerable<Comparison> Compared() =>
        from phase in Phases()
        from moment in Settler.Circuits(Settled.State, between: phase > 0) ?? []
        select Comparison.Of(moment.Circuit, Seed, exactAlways: false);

    /// <summary>Where a picture shows other volts than the circuits it was taken from, solved afresh.</summary>
    public IEnumerable<string> NotAsSolved()
    {
        foreach (var phase in Settled.Outcome == Simulation.Outcome.Settled ? Phases() : [])
        {
            var mean = new double[Wiring.NodeCount];
            foreach (var (share, circuit) in Settler.Circuits(Settled.State, between: phase > 0) ?? [])
            {
                var solver = new Solver(circuit);
                solver.Solve();
                for (var n = 0; n < mean.Length; n++)
                {
                    mean[n] += share * solver.Potentials[n];
                }
            }

            for (var n = 0; n < mean.Length; n++)
            {
                if (!(Math.Abs(mean[n] - Settled.Pictures[phase].Volts[n]) <= AllowedVolts * (1 + Math.Abs(mean[n]))))
                {
                    yield return FormattableString.Invariant($"{this}: node {n} shown {Settled.Pictures[phase].Volts[n]:R} V, solved {mean[n]:R} V");
                }
            }
        }
    }

    public override string ToString() => FormattableString.Invariant($"{Bike}, seed {Seed}, {Fault?.ToString() ?? "no fault"}");

    private IEnumerable<int> Phases() => Enumerable.Range(0, Settled.Outcome == Simulation.Outcome.Settled ? Settled.Pictures.Length : Math.Min(1, Settled.Pictures.Length));

    private double LargestSumAmps(Picture picture)
    {
        var sums = new double[Wiring.NodeCount];
        for (var l = 0; l < Wiring.Links.Length; l++)
        {
            sums[Wiring.Links[l].From] -= picture.Amps[l];
            sums[Wiring.Links[l].To] += picture.Amps[l];
        }

        return sums.Max(Math.Abs);
    }
}
