using System.Diagnostics;
using System.Text;
using Loomwright.Tests.Walk;
using Loomwright.Text;
using Loomwright.Walk;

namespace Loomwright.Long;

/// <summary>Every position of every example (<c>--count</c>: the most states of one), against the dumb walker where there are few, and of every example with each wire left out in turn.</summary>
internal static class Walks
{
    private const double MostWithoutEffect = 0.10;
    private const int MostStates = 50_000;
    private const int MostForTheDumb = 20_000;

    // The gallery and the cold start show mistakes on purpose.
    public static string Run(LongRun run)
    {
        var designs = Directory.GetDirectories("examples")
            .Where(d => Path.GetFileName(d) is not ("gallery" or "cold-start"))
            .SelectMany(d => Directory.GetFiles(d, "*.loom.yaml"))
            .Order(StringComparer.Ordinal)
            .Select(path => Bike.Read(new SourceText(path, File.ReadAllText(path))))
            .ToList();
        var whole = Whole(run, designs, out var walkedToTheEnd);
        return whole + Dumb(run, walkedToTheEnd) + string.Concat(walkedToTheEnd.Select(d => Removed(run, d)));
    }

    // What is too large to be walked to its end says so; a surprise is a failure in any case.
    private static string Whole(LongRun run, List<Bike> designs, out List<Bike> walkedToTheEnd)
    {
        walkedToTheEnd = [];
        var rows = new StringBuilder();
        foreach (var bike in designs)
        {
            var watch = Stopwatch.StartNew();
            using var process = Process.GetCurrentProcess();
            var before = process.TotalProcessorTime;
            var walked = bike.Walk(new WalkOptions { MostStates = run.Count ?? MostStates, Progress = p => run.Progress((int)(p.States - p.Waiting), (int)p.States) });
            process.Refresh();
            var computing = process.TotalProcessorTime - before;
            run.Failed |= !walked.Surprises.IsEmpty;
            if (walked.Complete)
            {
                walkedToTheEnd.Add(bike);
            }

            rows.Append(FormattableString.Invariant(
                $"| {bike.Loom!.Name} | {bike.Loom.Wires.Length} | {walked.ControlCombinations} | {walked.States} | {walked.Events} | {walked.ConfigurationsSolved} | {walked.Depth} | {walked.End} | {walked.Surprises.Length} | {watch.Elapsed.TotalSeconds:F1} | {computing.TotalSeconds:F1} |\n"));
        }

        return $"""
            | bike | wires | settings of the controls | states | operations tried | configurations solved | deepest | end | surprises | seconds | seconds of computing, all workers |
            |---|---|---|---|---|---|---|---|---|---|---|
            {rows}

            """;
    }

    private static string Dumb(LongRun run, List<Bike> designs)
    {
        var rows = new StringBuilder();
        foreach (var loom in designs.Select(d => d.Loom!).Where(l => l.Functions.Length > 0))
        {
            var (walked, states) = Walker.WalkAndKeep(loom, new WalkOptions { MostStates = MostForTheDumb });
            if (!walked.Complete)
            {
                continue;
            }

            var (dumbStates, dumbSurprises) = DumbWalker.Walk(loom);
            var same = dumbStates.SetEquals(states.Select(s => DumbWalker.Signature(s.State, s.Promised.AsSpan().ToArray()))) && dumbSurprises.Count == walked.Surprises.Length;
            run.Failed |= !same;
            rows.Append(FormattableString.Invariant($"| {loom.Name} | {dumbStates.Count} | {dumbSurprises.Count} | {(same ? "the same" : "NOT THE SAME")} |\n"));
        }

        return $"""
            ## Against the dumb walker

            | bike | states | surprises | |
            |---|---|---|---|
            {rows}

            """;
    }

    private static string Removed(LongRun run, Bike bike)
    {
        var wires = bike.Loom!.Wires.Select(w => w.Name).ToList();
        var results = new List<WireRemoved>();
        foreach (var wire in wires)
        {
            results.Add(bike.WithoutWire(wire)!);
            run.Progress(results.Count, wires.Count);
        }

        var silent = results.Where(r => r.Surprise is null).ToList();
        var unexplained = silent.Count(r => r.Reason is null || r.End != WalkEnd.Complete);
        run.Failed |= unexplained > 0 || silent.Count > MostWithoutEffect * results.Count;
        var list = string.Concat(silent.Select(r => $"- {r.Wire}: {r.Reason ?? "no reason found"}\n"));
        return FormattableString.Invariant($"""
            ## {bike.Loom.Name}, one wire left out at a time

            {results.Count} wires: {results.Count - silent.Count} give a surprise, {silent.Count} have no effect, {unexplained} of them without a reason.

            {list}

            """);
    }
}
