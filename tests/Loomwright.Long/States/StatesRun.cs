using Loomwright.Oracle;
using Loomwright.Simulation;

namespace Loomwright.Long.States;

/// <summary>Random states of whole machines with single faults: all solved, currents adding up, some of them as ngspice says.</summary>
internal static class StatesRun
{
    private const int Usual = 100_000;
    private const int ComparedOf = 10;
    private const double MostInvalid = 0.02;

    public static string Run(LongRun run)
    {
        if (!Ngspice.IsInstalled)
        {
            run.Failed = true;
            return "libngspice is not installed: nothing was compared.\n";
        }

        var count = run.Count ?? Usual;
        var tallies = Visits.Of(run.Seed, count, ComparedOf, File.ReadAllText, done => run.Progress(done, count));
        var invalid = tallies.Sum(t => t.Circuits.Count(c => !c.SimulatorValid));
        run.Failed = tallies.Any(t => t.Wrong.Count > 0) || invalid > MostInvalid * tallies.Sum(t => t.Circuits.Count);
        (string What, Func<Tally, FormattableString> Of)[] rows =
        [
            ("", t => $"{t.Bike.Name}"),
            ("---", _ => $"---"),
            ("states", t => $"{t.States}"),
            ("different settings of the controls among them", t => $"{t.Settings}"),
            ("different single faults among them, of those listed", t => $"{t.Faults} of {t.Bike.Faults}"),
            ("settled", t => $"{t.Outcomes[Outcome.Settled]}"),
            ("of these something flashes", t => $"{t.Flashing}"),
            ("switches on and off by itself", t => $"{t.Outcomes[Outcome.SwitchesByItself]}"),
            ("race", t => $"{t.Outcomes[Outcome.Race]}"),
            ("undefined input", t => $"{t.Outcomes[Outcome.UndefinedInput]}"),
            ("**unsolved**", t => $"{t.Outcomes[Outcome.Unsolved]}"),
            ("largest current sum left at any point, A", t => $"{t.LargestResidualAmps:E1}"),
            ("states compared with ngspice", t => $"{t.Compared}"),
            ("circuits of these (flashes and moments of dimming each on its own)", t => $"{t.Circuits.Count}"),
            ("circuits without a valid value from ngspice (checked by residual)", t => $"{t.Circuits.Count(c => !c.SimulatorValid)}"),
            ("circuits that arrived in ngspice only when started at our potentials", t => $"{t.Circuits.Count(c => c is { SimulatorValid: true, FromItsOwnStart: false })}"),
            ("largest difference to ngspice, part of what is allowed", t => $"{t.Circuits.Select(c => c.WorstOfSimulator).DefaultIfEmpty(0).Max():E1}"),
            ("floating nodes, compared with exact fractions by their tangents", t => $"{t.Circuits.Sum(c => c.FloatingNodes)}"),
            ("largest difference there, part of what is allowed", t => $"{t.Circuits.Select(c => c.WorstOfExact).DefaultIfEmpty(0).Max():E1}"),
            ("**outside what is allowed**", t => $"{t.Wrong.Count}"),
        ];
        return string.Concat(rows.Select(r => $"| {r.What} | {string.Join(" | ", tallies.Select(t => FormattableString.Invariant(r.Of(t))))} |\n"))
            + $"\nAllowed: no state unsolved, 1 µA left at a point, 1e-6 relative + 1e-6 V or A beside ngspice and beside exact fractions. Each row of {RandomBike.StatesOfASeed} states: power connected with every control in any position, then control moves and waits, each settled; one fault of the list in nine rows of ten.\n"
            + string.Concat(tallies.SelectMany(t => t.Wrong).Take(20).Select(w => $"- {w}\n"));
    }
}
