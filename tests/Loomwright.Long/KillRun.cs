using Loomwright.Killing;

namespace Loomwright.Long;

/// <summary>The program killed again and again while a phone hands answers over.</summary>
internal static class KillRun
{
    private const int UsualCount = 500;

    public static string Run(LongRun run)
    {
        var folder = Directory.CreateTempSubdirectory("loomwright");
        try
        {
            var count = run.Count ?? UsualCount;
            var design = File.ReadAllText(Path.Combine("examples", "kittiwake-bench", "kittiwake-bench.loom.yaml"));
            var killed = Kills.Run(Path.Combine(AppContext.BaseDirectory, "loomwright.dll"), design, folder.FullName, count, run.Seed, done => run.Progress(done, count)).GetAwaiter().GetResult();
            run.Failed = killed.Lost + killed.Missing + killed.Doubled > 0 || !killed.DesignWhole || killed.SaidKept == 0;
            return FormattableString.Invariant($"""
                The program was started, given answers as a phone gives them, killed (SIGKILL) at a random moment within {Kills.MostWaitMilliseconds} ms, and started again.

                | | |
                |---|---|
                | kills | {killed.Kills} |
                | answers given | {killed.Given} |
                | said to be kept | {killed.SaidKept} |
                | said to be kept and lost | {killed.Lost} |
                | not in the record after the last handing over | {killed.Missing} |
                | in the record more than once | {killed.Doubled} |
                | design byte for byte as it was | {(killed.DesignWhole ? "yes" : "no")} |

                """);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
