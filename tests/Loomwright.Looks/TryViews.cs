using Microsoft.Playwright;

namespace Loomwright.Looks;

/// <summary>Try: at rest, at work, a mistake chosen, in, one that burns, and the plan beside.</summary>
internal static class TryViews
{
    public static async IAsyncEnumerable<string> Of(IPage page, string address)
    {
        await page.GotoAsync($"{address}/try/{Views.Bike}");
        await page.Locator("[data-live]").WaitForAsync();
        yield return "try-rest";

        await page.Locator(".pick input[value=riding]").CheckAsync();
        await page.Locator(".latch").First.ClickAsync();
        await page.Locator(".latch").Last.ClickAsync();
        await page.Locator(".seenlist .row").First.ClickAsync();
        await page.Locator(".way").WaitForAsync();
        yield return "try-working";

        await page.GetByRole(AriaRole.Button, new() { Name = "Put a mistake in" }).ClickAsync();
        await page.Locator(".mistakes").WaitForAsync();
        yield return "try-mistakes";

        await page.Locator("#mistake-words").FillAsync("left out");
        await page.Locator("details[open] .row").Nth(4).ClickAsync();
        await page.Locator(".strip").WaitForAsync();
        yield return "try-mistake-in";

        await page.Locator(".strip .act").Last.ClickAsync();
        await page.Locator("#mistake-words").FillAsync("box B+ B- touch");
        await page.Locator("details[open] .row").First.ClickAsync();
        await page.Locator(".event").First.WaitForAsync();
        yield return "try-fuse-blown";

        await page.GetByText("Plan", new() { Exact = true }).ClickAsync();
        await page.Locator(".stage").WaitForAsync();
        yield return "try-plan";

        await page.GotoAsync($"{address}/try/sandpiper/sandpiper.loom.yaml");
        await page.Locator("[data-live]").WaitForAsync();
        await page.Locator(".pick input").Nth(1).CheckAsync();
        yield return "try-relays";
    }
}
