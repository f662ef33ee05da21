using System.Diagnostics;
using System.Text;
using Loomwright.Text;
using Loomwright.Walk;

namespace Loomwright.Long;

/// <summary>Every position of every example, and of every example with each wire left out in turn.</summary>
internal static class Walks
{
    private const double MostWithoutEffect = 0.10;

    public static string Run(LongRun run)
    {
        var designs = Directory.GetDirectories("examples")
            .Where(d => Path.GetFileName(d) != "gallery")
            .SelectMany(d => Directory.GetFiles(d, "*.loom.yaml"))
            .Order(StringComparer.Ordinal)
            .Select(path => Bike.Read(new SourceText(path, File.ReadAllText(path))))
            .ToList();
        return Whole(run, designs) + string.Concat(designs.Select(d => Removed(run, d)));
    }

    private static string Whole(LongRun run, List<Bike> designs)
    {
        var rows = new StringBuilder();
        foreach (var bike in designs)
        {
            var watch = Stopwatch.StartNew();
            using var process = Process.GetCurrentProcess();
            var before = process.TotalProcessorTime;
            var walked = bike.Walk(new WalkOptions { Progress = p => run.Progress((int)(p.States - p.Waiting), (int)p.States) });
            process.Refresh();
            var computing = process.TotalProcessorTime - before;
            run.Failed |= !walked.Complete || !walked.Surprises.IsEmpty;
            rows.Append(FormattableString.Invariant(
                $"| {bike.Loom!.Name} | {bike.Loom.Wires.Length} | {walked.ControlCombinations} | {walked.States} | {walked.Events} | {walked.ConfigurationsSolved} | {walked.Depth} | {walked.End} | {walked.Surprises.Length} | {watch.Elapsed.TotalSeconds:F1} | {computing.TotalSeconds:F1} |\n"));
        }

        return $"""
            | bike | wires | settings of the controls | states | operations tried | configurations solved | deepest | end | surprises | seconds | seconds of computing, all workers |
            |---|---|---|---|---|---|---|---|---|---|---|
            {rows}

            """;
    }

    private static string Removed(LongRun run, Bike bike)
    {
        var wires = bike.Loom!.Wires.Select(w => w.Name).Take(run.Count ?? int.MaxValue).ToList();
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
