using Loomwright.Oracle;

namespace Loomwright.Long;

/// <summary>Random networks of all element kinds against ngspice and against exact fractions.</summary>
internal static class Networks
{
    private const int Usual = 20_000;
    private const double MostInvalid = 0.02;

    public static string Run(LongRun run)
    {
        if (!Ngspice.IsInstalled)
        {
            run.Failed = true;
            return "libngspice is not installed: nothing was compared.\n";
        }

        var count = run.Count ?? Usual;
        var all = new List<Comparison>();
        for (var k = 0; k < count; k++)
        {
            all.Add(Comparison.Of(run.Seed + (ulong)k, exactAlways: true));
            run.Progress(k + 1, count);
        }

        var wrong = all.Where(c => c.Wrong.Count > 0).ToList();
        var invalid = all.Count(c => !c.SimulatorValid);
        run.Failed = wrong.Count > 0 || invalid > MostInvalid * count;
        var straight = all.Where(c => !c.Bends).ToList();
        var bent = all.Where(c => c.Bends).ToList();
        return FormattableString.Invariant($"""
            | | straight | bent |
            |---|---|---|
            | networks | {straight.Count} | {bent.Count} |
            | without a valid value from ngspice (checked by residual) | {straight.Count(c => !c.SimulatorValid)} | {bent.Count(c => !c.SimulatorValid)} |
            | arrived in ngspice only when started at our potentials | {straight.Count(c => c.SimulatorValid && !c.FromItsOwnStart)} | {bent.Count(c => c.SimulatorValid && !c.FromItsOwnStart)} |
            | largest difference to ngspice, part of what is allowed | {straight.Max(c => c.WorstOfSimulator):E1} | {bent.Max(c => c.WorstOfSimulator):E1} |
            | largest difference to the exact solution, part of what is allowed | {straight.Max(c => c.WorstOfExact):E1} | {bent.Max(c => c.WorstOfExact):E1} |
            | largest residual, A | {straight.Max(c => c.ResidualAmps):E1} | {bent.Max(c => c.ResidualAmps):E1} |
            | floating nodes | {straight.Sum(c => c.FloatingNodes)} | {bent.Sum(c => c.FloatingNodes)} |
            | most Newton steps (mean) | {straight.Max(c => c.Steps)} ({straight.Average(c => c.Steps):F1}) | {bent.Max(c => c.Steps)} ({bent.Average(c => c.Steps):F1}) |
            | outside what is allowed, unsolved included | {straight.Count(c => c.Wrong.Count > 0)} | {bent.Count(c => c.Wrong.Count > 0)} |

            Allowed: straight 1e-6 relative + 1e-9 V or A, residual 1 nA; bent 1e-6 relative + 1e-6 V or A, residual 1 µA.
            Every straight network is compared with exact fractions as well, a bent one where it has floating nodes, by its tangents.

            """) + string.Concat(wrong.Select(c => FormattableString.Invariant($"- seed {c.Seed}: {string.Join("; ", c.Wrong.Take(4))}\n")));
    }
}
