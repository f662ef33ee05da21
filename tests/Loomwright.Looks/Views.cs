using Loomwright.Chromium;
using Microsoft.Playwright;

namespace Loomwright.Looks;

/// <summary>Every page, in the states a person meets.</summary>
internal static class Views
{
    public const string Bike = "kittiwake-bench/kittiwake-bench.loom.yaml";

    /// <summary>Brings one page from state to state and tells the name of each that is worth a picture.</summary>
    public static async IAsyncEnumerable<string> Of(IPage page, string address)
    {
        await foreach (var name in Read(page, address))
        {
            yield return name;
        }

        await foreach (var name in Asked(page, address))
        {
            yield return name;
        }

        await foreach (var name in TryViews.Of(page, address))
        {
            yield return name;
        }

        await foreach (var name in PictureViews.Of(page, address))
        {
            yield return name;
        }

        await foreach (var name in GuidedViews.Of(page, address))
        {
            yield return name;
        }
    }

    // Pages that are only read.
    private static async IAsyncEnumerable<string> Read(IPage page, string address)
    {
        foreach (var (name, path) in new[]
        {
            ("bikes", ""),
            ("no-such-page", "/nothing"),
            ("check", "/check/gallery/lock-joins-feed-and-ground.loom.yaml"),
            ("check-clear", $"/check/{Bike}"),
            ("bench-0", $"/bench/{Bike}"),
            ("bench-2", $"/bench/{Bike}?stage=2"),
            ("bench-on-the-bike", $"/bench/{Bike}?on=bike"),
            ("sizes", $"/sizes/{Bike}"),
            ("gallery", "/gallery"),
            ("record-empty", "/record/gallery/no-way-back.loom.yaml"),
        })
        {
            await page.GotoAsync(address + path);
            yield return name;
        }

        await page.GotoAsync($"{address}/bench/{Bike}?catches=true");
        await page.Locator("#catches ~ *").First.WaitForAsync();
        yield return "bench-catches";
    }

    // Pages that ask and answer.
    private static async IAsyncEnumerable<string> Asked(IPage page, string address)
    {
        await page.GotoAsync($"{address}/gallery/1");
        await page.Locator("[data-live]").WaitForAsync();
        yield return "quiz";

        await Press("Tell me");
        await page.Locator(".what").WaitForAsync();
        yield return "quiz-told";

        await page.GotoAsync($"{address}/positions/{Bike}");
        await page.Locator("[data-live]").WaitForAsync();
        await Press("Walk every position");
        await page.Locator("#surprises-title").WaitForAsync();
        yield return "positions";

        await page.GotoAsync($"{address}/unmarked/{Bike}");
        await page.Locator("[data-live]").WaitForAsync();
        yield return "unmarked-begin";

        await Press("Begin");
        await page.Locator(".ask").WaitForAsync();
        await Press("It beeps");
        await page.Locator(".points").WaitForAsync();
        yield return "unmarked";

        await page.GotoAsync($"{address}/unmarked/{Bike}");
        await page.Locator("[data-live]").WaitForAsync();
        await page.GetByLabel("A lamp").CheckAsync();
        await Press("Begin");
        await page.Locator(".ask").WaitForAsync();
        yield return "unmarked-lamp";

        await page.GotoAsync($"{address}/trouble/{Bike}");
        await page.Locator("[data-live] .answers .act").First.WaitForAsync();
        yield return "trouble";

        await Press("One lamp stays dark");
        await page.Locator("form.report").WaitForAsync();
        yield return "trouble-seen";

        await page.GetByLabel("What did you do?").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await page.Locator("form.report select").First.SelectOptionAsync(new SelectOptionValue { Label = "dark" });
        await Press("That is what I see");
        await page.Locator(".causes").WaitForAsync();
        yield return "trouble-asked";

        Task Press(string word) => page.GetByRole(AriaRole.Button, new() { Name = word }).First.ClickAsync();
    }
}
