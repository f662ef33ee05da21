using Microsoft.Playwright;

namespace Loomwright.Looks;

/// <summary>The picture: at rest, found, followed, with a mistake in, a box chosen, and one sheet of each kind.</summary>
internal static class PictureViews
{
    public static async IAsyncEnumerable<string> Of(IPage page, string address)
    {
        await Open(Views.Bike);
        yield return "picture-rest";

        await page.Locator(".board > .controls input[value=riding]").CheckAsync();
        await page.GetByLabel("Find a wire").FillAsync("tail lamp");
        await page.Locator(".found .row").First.WaitForAsync();
        yield return "picture-find";

        await page.Locator(".found .row").First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Follow this wire" }).ClickAsync();
        await page.Locator(".follow.on").WaitForAsync();
        yield return "picture-follow";

        await page.GetByRole(AriaRole.Button, new() { Name = "A mistake here" }).ClickAsync();
        await page.Locator(".popup").WaitForAsync();
        yield return "picture-mistakes";

        await page.Locator(".popup .row").First.ClickAsync();
        await page.Locator(".what li").First.WaitForAsync();
        yield return "picture-mistake-in";

        await Open(Views.Bike);
        await page.Locator(".board > .controls input[value=riding]").CheckAsync();
        await page.Locator(".board > .controls .latch").First.ClickAsync();
        await page.GetByLabel("Find a wire").FillAsync("box");
        await page.Locator(".found .row", new() { HasText = "part" }).First.ClickAsync();
        await page.Locator(".chosen").WaitForAsync();
        await Unfold();
        yield return "picture-box";

        await Open("kittiwake/kittiwake.loom.yaml");
        await Unfold();
        yield return "picture-whole";

        foreach (var kind in new[] { "Function", "Place", "Plug" })
        {
            var sheet = page.Locator($"optgroup[label={kind}] option").First;
            await page.GetByLabel("Sheet", new() { Exact = true }).SelectOptionAsync((await sheet.GetAttributeAsync("value"))!);
            await page.Locator($"svg.loom[aria-label='{(await sheet.InnerTextAsync()).Trim()}']").WaitForAsync();
            await page.Locator(".busy").WaitForAsync(new() { State = WaitForSelectorState.Detached });
            yield return $"picture-{kind.ToLowerInvariant()}";
        }

        async Task Open(string bike)
        {
            await page.GotoAsync($"{address}/picture/{bike}");
            await page.Locator("main[data-live]").WaitForAsync();
        }

        async Task Unfold()
        {
            if (page.GetByRole(AriaRole.Button, new() { Name = "The drawing" }) is var key && await key.IsVisibleAsync())
            {
                await key.ClickAsync();
            }

            await page.Locator("svg.loom").WaitForAsync();
            await page.Locator(".busy").WaitForAsync(new() { State = WaitForSelectorState.Detached });
        }
    }
}
