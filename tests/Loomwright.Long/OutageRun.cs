using System.Diagnostics;
using System.Globalization;
using Loomwright.Chromium;
using Loomwright.Records;
using Loomwright.Web.Start;
using Microsoft.Playwright;

namespace Loomwright.Long;

/// <summary>The laptop away while a phone is at the bench, by the clock on the wall: a minute with answers given, then ten without.</summary>
internal static class OutageRun
{
    private const int Answers = 3;

    public static string Run(LongRun run) => Play(run).GetAwaiter().GetResult();

    private static async Task<string> Play(LongRun run)
    {
        var folder = Directory.CreateTempSubdirectory("loomwright");
        try
        {
            File.Copy(Path.Combine("examples", "kittiwake-bench", "kittiwake-bench.loom.yaml"), Path.Combine(folder.FullName, "b.loom.yaml"));
            await using var browser = await Chromium.Browser.Start();
            var host = await WebHost.Start(folder.FullName);
            var port = new Uri(host.Address).Port;
            var page = await browser.Page(Screen.Phone);
            await page.GotoAsync($"{host.Address}/session/b.loom.yaml");
            await Press(page, "Begin");
            await Says(page, "linked to the laptop");

            var away = Stopwatch.StartNew();
            await host.DisposeAsync();
            await Says(page, "no link to the laptop");
            var told = away.Elapsed;
            for (var answer = 0; answer < Answers; answer++)
            {
                await Press(page, "Done");
            }

            var step = await At(page);
            await Task.Delay(TimeSpan.FromMinutes(1) - away.Elapsed);
            host = await WebHost.Start(folder.FullName, port);
            await Says(page, "linked to the laptop");
            await page.WaitForFunctionAsync("Object.keys(localStorage).filter(k => k.startsWith('waiting.')).every(k => localStorage[k] === '[]')");
            var minute = away.Elapsed;
            var kept = Kept(folder.FullName);

            await host.DisposeAsync();
            away.Restart();
            await Says(page, "no link to the laptop");
            var minutes = run.Count ?? 10;
            await Task.Delay(TimeSpan.FromMinutes(minutes) - away.Elapsed);
            host = await WebHost.Start(folder.FullName, port);
            await Says(page, "linked to the laptop");
            var long_ = away.Elapsed;
            var later = await At(page);
            await host.DisposeAsync();
            run.Failed = kept != Answers || later != step || told > TimeSpan.FromSeconds(2);
            return string.Create(CultureInfo.InvariantCulture, $"""
                A phone (Chromium, 390 × 844) at the first stage of kittiwake-bench; the program on the laptop stopped and started again on the same port, no clock made faster.

                | | |
                |---|---|
                | said that there is no link after | {told.TotalSeconds:0.0} s |
                | away with {Answers} answers given | {minute.TotalSeconds:0.0} s until all were handed over |
                | of them in the record | {kept} |
                | away once more | {long_.TotalSeconds:0.0} s until the link was back |
                | on the same step then | {(later == step ? "yes" : "no")} |

                """);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static Task Press(IPage page, string word) => page.Locator("button:visible").GetByText(word, new() { Exact = true }).ClickAsync();

    private static Task Says(IPage page, string link) => Assertions.Expect(page.Locator("[data-link]")).ToHaveTextAsync(link, new() { Timeout = 30_000 });

    private static async Task<string?> At(IPage page) => await page.Locator(".screen:visible").GetAttributeAsync("data-screen");

    private static int Kept(string folder)
    {
        using var records = RecordFile.Open(folder);
        return records.Entries(records.Sessions("b.loom.yaml")[0].Id).Count(e => e.Kind == EntryKind.Done);
    }
}
