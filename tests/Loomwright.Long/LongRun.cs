using System.Diagnostics;
using System.Globalization;

namespace Loomwright.Long;

/// <summary>What every long run has: a seed, a count, progress on standard error, a place for its result.</summary>
/// <param name="Seed">First seed; the default is fixed, so that a run can be repeated.</param>
/// <param name="Count">How many cases, null for the run's own number.</param>
/// <param name="Only">The one example that is run, null for all of the run's own.</param>
public sealed record LongRun(ulong Seed, int? Count, string? Only = null)
{
    private readonly Stopwatch _sinceReport = Stopwatch.StartNew();

    /// <summary>Set when anything was wrong.</summary>
    public bool Failed { get; set; }

    /// <summary>Says how far the run is, every few seconds.</summary>
    public void Progress(int done, int count)
    {
        if (_sinceReport.Elapsed.TotalSeconds >= 5)
        {
            Console.Error.WriteLine(FormattableString.Invariant($"{done} of {count}"));
            _sinceReport.Restart();
        }
    }

    /// <summary>Reads the options, runs, writes the result file with the commit measured (LOOMWRIGHT_COMMIT, as ./long sets it).</summary>
    public static int Do(string[] args, Func<LongRun, string> run)
    {
        var long_ = new LongRun(
            ulong.Parse(Option(args, "--seed") ?? "1", CultureInfo.InvariantCulture),
            Option(args, "--count") is { } count ? int.Parse(count, CultureInfo.InvariantCulture) : null,
            Option(args, "--only"));
        var watch = Stopwatch.StartNew();
        var result = run(long_);
        var head = FormattableString.Invariant($"""
            # Long run: {args[0]}

            Commit {Environment.GetEnvironmentVariable("LOOMWRIGHT_COMMIT") ?? "unknown"}, first seed {long_.Seed}, {watch.Elapsed.TotalMinutes:F1} minutes on {Environment.ProcessorCount} processors.


            """);
        var file = Path.Combine("docs", "long", (long_.Only is { } only ? $"{args[0]}-{only}" : args[0]) + ".md");
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, head + result);
        Console.WriteLine(result);
        return long_.Failed ? 1 : 0;
    }

    private static string? Option(string[] args, string name) =>
        Array.IndexOf(args, name) is >= 0 and var at && at + 1 < args.Length ? args[at + 1] : null;
}
