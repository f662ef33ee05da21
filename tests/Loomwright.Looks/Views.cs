using Loomwright.Chromium;
using Microsoft.Playwright;

namespace Loomwright.Looks;

/// <summary>A page in a state worth a picture.</summary>
internal sealed record View(string FileName, IPage Page);

internal static class Views
{
    private const string Bike = "kittiwake-bench/kittiwake-bench.loom.yaml";

    /// <summary>Every page, and Try in the states a person meets.</summary>
    public static async IAsyncEnumerable<View> Of(Browser browser, string address, Screen screen, bool dim)
    {
        var page = await browser.Page(screen, dim);
        View Named(string name) => new($"{name}-{screen.Name}-{(dim ? "dim" : "light")}", page);

        await page.GotoAsync(address);
        yield return Named("bikes");

        await page.GotoAsync($"{address}/check/gallery/lock-joins-feed-and-ground.loom.yaml");
        yield return Named("check");

        await page.GotoAsync($"{address}/bench/{Bike}");
        yield return Named("bench-0");

        await page.GotoAsync($"{address}/bench/{Bike}?stage=2");
        yield return Named("bench-2");

        await page.GotoAsync($"{address}/gallery");
        yield return Named("gallery");

        await page.GotoAsync($"{address}/gallery/1");
        await page.Locator("[data-live]").WaitForAsync();
        yield return Named("broken-bike");

        await page.GetByRole(AriaRole.Button, new() { Name = "Tell me" }).ClickAsync();
        await page.Locator(".what").WaitForAsync();
        yield return Named("broken-bike-told");

        await page.GotoAsync($"{address}/positions/{Bike}");
        await page.Locator("[data-live]").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Walk every position" }).ClickAsync();
        await page.Locator("#surprises-title").WaitForAsync();
        yield return Named("positions");

        await page.GotoAsync($"{address}/unmarked/{Bike}");
        await page.Locator("[data-live]").WaitForAsync();
        await page.Locator("form .act").First.ClickAsync();
        await page.Locator(".ask").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "It beeps" }).ClickAsync();
        await page.Locator(".points").WaitForAsync();
        yield return Named("unmarked");

        await page.GotoAsync($"{address}/try/{Bike}");
        await page.Locator("[data-live]").WaitForAsync();
        yield return Named("try-rest");

        await page.Locator(".pick input[value=riding]").CheckAsync();
        await page.Locator(".latch").First.ClickAsync();
        await page.Locator(".latch").Last.ClickAsync();
        await page.Locator(".seenlist .row").First.ClickAsync();
        await page.Locator(".way").WaitForAsync();
        yield return Named("try-working");

        await page.GetByRole(AriaRole.Button, new() { Name = "Put a mistake in" }).ClickAsync();
        await page.Locator(".mistakes").WaitForAsync();
        yield return Named("try-mistakes");

        await page.Locator("#mistake-words").FillAsync("left out");
        await page.Locator("details[open] .row").Nth(4).ClickAsync();
        await page.Locator(".strip").WaitForAsync();
        yield return Named("try-mistake-in");

        await page.Locator(".strip .act").Last.ClickAsync();
        await page.Locator("#mistake-words").FillAsync("box B+ B- touch");
        await page.Locator("details[open] .row").First.ClickAsync();
        await page.Locator(".event").First.WaitForAsync();
        yield return Named("try-fuse-blown");

        await page.GetByText("Plan", new() { Exact = true }).ClickAsync();
        await page.Locator(".stage").WaitForAsync();
        yield return Named("try-plan");

        await page.GotoAsync($"{address}/picture/{Bike}");
        await page.Locator("main[data-live]").WaitForAsync();
        yield return Named("picture-rest");

        await page.Locator(".board > .controls input[value=riding]").CheckAsync();
        await page.GetByLabel("Find a wire").FillAsync("tail lamp");
        await page.Locator(".found .row").First.WaitForAsync();
        yield return Named("picture-find");

        await page.Locator(".found .row").First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Follow this wire" }).ClickAsync();
        await page.Locator(".follow.on").WaitForAsync();
        yield return Named("picture-follow");

        await page.GetByRole(AriaRole.Button, new() { Name = "A mistake here" }).ClickAsync();
        await page.Locator(".popup").WaitForAsync();
        yield return Named("picture-mistakes");

        await page.Locator(".popup .row").First.ClickAsync();
        await page.Locator(".what li").First.WaitForAsync();
        yield return Named("picture-mistake-in");
    }
}
