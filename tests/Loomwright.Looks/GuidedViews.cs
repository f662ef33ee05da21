using Microsoft.Playwright;

namespace Loomwright.Looks;

/// <summary>A session at the bench: begun, one screen of each sort, what goes wrong, its end, and the record of it.</summary>
internal static class GuidedViews
{
    private static readonly (string Name, string Which)[] Screens =
    [
        ("step", "[data-act=Connect]"),
        ("measure", "[data-act=Measure]"),
        ("gate", "[data-gate]"),
        ("powered", "[data-power=on][data-check]"),
        ("not", "[data-screen=not]"),
        ("hot", "[data-screen=hot]"),
        ("end", "[data-screen=end]"),
    ];

    public static async IAsyncEnumerable<string> Of(IPage page, string address)
    {
        await page.GotoAsync($"{address}/session/{Views.Bike}?anew=true");
        yield return "session-begin";

        await page.GetByLabel("Who works").FillAsync("Ann");
        await page.GetByLabel("Which meter").FillAsync("red meter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        await page.Locator(".screen:visible").WaitForAsync();
        await page.Locator(".screen:visible [data-done]").ClickAsync();
        yield return "session-first";

        foreach (var (name, which) in Screens)
        {
            await page.EvaluateAsync("""
                which => {
                  const root = document.querySelector("[data-session]");
                  localStorage.setItem(`at.${root.dataset.stage}.${root.dataset.session}`, JSON.stringify(document.querySelector(`.screen${which}`).dataset.screen));
                }
                """, which);
            await page.ReloadAsync();
            await page.Locator($".screen{which}:visible").First.WaitForAsync();
            yield return $"session-{name}";
        }

        await page.GotoAsync($"{address}/record/{Views.Bike}");
        yield return "record";
    }
}
