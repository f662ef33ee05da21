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
        await page.Locator(".runs .screen:visible").WaitForAsync();
        await page.Locator(".screen:visible [data-done]").ClickAsync();
        yield return "session-first";

        foreach (var (name, which) in Screens)
        {
            // As it is come to: all before it as expected, or one that is not.
            await page.EvaluateAsync("""
                async (which) => {
                  const root = document.querySelector("[data-session]");
                  const id = root.dataset.session;
                  const steps = JSON.parse(document.querySelector("[data-stages-of]").textContent).find((s) => s.number === Number(root.dataset.stage)).steps;
                  const screen = document.querySelector(`.screen${which}`).dataset.screen;
                  const powered = document.querySelector("[data-power=on][data-check]").dataset.screen;
                  const to = steps.findIndex((s) => s.id === screen);
                  const had = screen === "not" ? [[powered, "seen", "not"]] : screen === "hot" ? [[powered, "seen", "as expected"]]
                    : steps.slice(0, to < 0 ? steps.length : to).map((s) => [s.id, s.check ? "seen" : "done", s.check ? "as expected" : ""]);
                  const entries = had.map(([step, kind, raw]) => ({ id: crypto.randomUUID(), step, kind, raw, at: new Date().toISOString() }));
                  await fetch(`/session-api/${id}`, { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(entries) });
                  localStorage.setItem(`at.${root.dataset.stage}.${id}`, JSON.stringify(screen));
                  localStorage.setItem(`asked.${root.dataset.stage}.${id}`, JSON.stringify(powered));
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
